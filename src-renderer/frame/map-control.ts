/** What the rest of the window may ask of the drawing. */
export interface MapControl {
  fit(): void
  zoomBy(factor: number): void
  realSize(): void
  reveal(motif: string): void
  /** Gives the drawing the keyboard. */
  focus(): void
}
