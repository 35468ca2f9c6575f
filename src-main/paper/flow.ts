/** Content that runs on over pages: what does not fit goes to the next one. */
import type { Draft, Job } from './page'
import { newSheet } from './page'
import type { Sheet } from './setting'

export class Flow {
  private readonly finished: { sheet: Sheet; bookmarks: string[] }[] = []
  private bookmarks: string[]

  constructor(
    private readonly job: Job,
    public sheet: Sheet,
    public y: number,
    bookmark: string,
  ) {
    this.bookmarks = [bookmark]
  }

  /** Room left on the page, in mm. */
  get room(): number {
    return this.sheet.bottom - this.y
  }

  /** A bookmark that leads to the page in hand. */
  mark(name: string): void {
    this.bookmarks.push(name)
  }

  /** Makes sure of so much height, on a new page where the one in hand is too full; true when it is new. */
  need(height: number): boolean {
    if (height <= this.room || this.y <= this.sheet.top) return false
    this.finished.push({ sheet: this.sheet, bookmarks: this.bookmarks })
    this.sheet = newSheet(this.job)
    this.y = this.sheet.top
    this.bookmarks = []
    return true
  }

  /** The pages, the last of them open for more. */
  drafts(section: Draft['section'], name: string): Draft[] {
    return [
      ...this.finished.map((page) => ({ section, name, ...page })),
      { section, name, sheet: this.sheet, bookmarks: this.bookmarks, end: this.y },
    ]
  }
}
