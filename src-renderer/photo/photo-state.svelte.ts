/** One picture on its way to a motif: what was found in it, and what was set right by hand. */
import type { Finding } from '../../shared-types/finding'
import type { KeptPhoto, UnitSystem } from '../../shared-types/project'
import type { Corners } from '../../src-core/photo/homography'
import { measuredOf, takenAs } from '../../src-core/photo/motif'
import type { Measured } from '../../src-core/photo/motif'
import type { PhotoAnswer, PhotoMeasures } from '../../src-core/photo/photo'
import { PictureError } from '../../src-core/photo/picture-file'
import type { Spot } from '../../src-core/photo/picture'
import { sheetByRuler } from '../../src-core/photo/ruler'
import type { Ruler } from '../../src-core/photo/ruler'
import { SHEET_SIZES } from '../../src-core/photo/sheet-sizes'
import type { SheetChoice } from '../../src-core/photo/sheet-sizes'
import { FinderStopped } from './finder'
import type { OpenedPicture, PhotoFinder } from './finder'
import { firstSizes } from '../../src-core/layout/first-sizes'
import { firstCorners, firstPoints, withSpot } from './on-picture'
import type { Laid } from './on-picture'

/** What was set by hand beside the picture; the rest is as it was found. */
interface ByHand {
  readonly kind?: PhotoMeasures['kind']
  readonly petals?: number
  readonly overTips?: number
  readonly overValleys?: number
}

export class PhotoState {
  readonly #finder: PhotoFinder
  phase = $state<'none' | 'reading' | 'asking' | 'measuring' | 'measured'>('none')
  /** How far the measuring has come, 0 to 1. */
  come = $state(0)
  /** Why a picture was refused, in words. */
  problem = $state('')
  name = $state('')
  /** Whether the picture is kept with the motif, which only whoever takes it can wish. */
  isKept = $state(false)
  picture = $state.raw<OpenedPicture | null>(null)
  sheet = $state<SheetChoice>('A4')
  corners = $state.raw<Corners | null>(null)
  areCornersSet = $state(false)
  /** The two points on a ruler, which of them stand where they are meant to, and what lies between them, in mm. */
  points = $state.raw<readonly [Spot, Spot] | null>(null)
  #pointsSet = $state.raw<readonly [boolean, boolean]>([false, false])
  rulerLength = $state(0)
  #answer = $state.raw<PhotoAnswer | null>(null)
  #byHand = $state.raw<ByHand>({})
  /** Counts what was asked, so that an answer that was overtaken is put away. */
  #asked = 0

  constructor(finder: PhotoFinder, sheet: SheetChoice, units: UnitSystem = 'metric') {
    this.#finder = finder
    this.sheet = sheet
    this.rulerLength = firstSizes(units).ruler
  }

  /** The ruler, once both of its points were set. */
  readonly ruler: Ruler | null = $derived.by(() => {
    const { points } = this
    if (this.sheet !== 'ruler' || !points || !this.#pointsSet.every(Boolean)) return null
    return { from: points[0], to: points[1], length: this.rulerLength }
  })

  /** What is moved by hand: corners of the sheet, or points on the ruler. */
  readonly handles: readonly Spot[] = $derived.by(
    () => (this.sheet === 'ruler' ? this.points : this.corners) ?? [],
  )

  /** Where the millimetres of what was found lie in the picture. */
  readonly laid: Laid | null = $derived.by(() => {
    if (this.sheet === 'ruler')
      return this.ruler && this.picture ? sheetByRuler(this.ruler, this.picture) : null
    return this.corners && { size: SHEET_SIZES[this.sheet], corners: this.corners }
  })

  /** What was found, taken as the kind of motif and with the petals that were chosen, in the sizes that were typed. */
  readonly measures: PhotoMeasures | null = $derived.by(() => {
    const found = this.#answer?.measures
    if (!found) return null
    const { kind, petals, overTips, overValleys } = this.#byHand
    const taken = takenAs(found, kind ?? found.kind, petals)
    return {
      ...taken,
      overTips: overTips ?? taken.overTips,
      overValleys: taken.kind === 'round' ? (overTips ?? taken.overTips) : (overValleys ?? taken.overValleys),
    }
  })

  /** The motif that comes of it. */
  readonly measured: Measured | null = $derived.by(() => (this.measures ? measuredOf(this.measures) : null))

  /** What stands against it; a remark on what was set by hand since is not made any more. */
  readonly findings: readonly Finding[] = $derived.by(() => {
    const { petals, overValleys, kind } = this.#byHand
    return (this.#answer?.findings ?? []).filter(
      ({ code }) =>
        !(code === 'photo/petals-unsure' && petals !== undefined) &&
        !(code === 'photo/dips-hidden' && overValleys !== undefined) &&
        !(code === 'photo/no-repeat' && kind !== undefined),
    )
  })

  /** Whether the numbers are sure: nothing stands against them, or what did was set by hand since. */
  readonly isSure: boolean = $derived.by(
    () => this.measures !== null && this.findings.every(({ severity }) => severity === 'note'),
  )

  /** The dips could not be made out: they are set on the picture. */
  readonly areDipsUnsure: boolean = $derived.by(
    () =>
      this.measures?.kind === 'petals' &&
      (this.#answer?.findings ?? []).some(({ code }) => code === 'photo/dips-hidden'),
  )

  get isBusy(): boolean {
    return this.phase === 'reading' || this.phase === 'measuring'
  }

  /** Opens a picture and measures it. */
  async open(file: File): Promise<void> {
    this.cancel()
    this.name = file.name
    this.isKept = false
    this.phase = 'reading'
    const asked = ++this.#asked
    try {
      const picture = await this.#finder.open(file)
      if (asked !== this.#asked) return
      this.picture = picture
    } catch (error) {
      this.#fell(error, asked)
      return
    }
    await this.measure()
  }

  /** Measures the picture that is open, with the corners as they were set. */
  async measure(): Promise<void> {
    const { picture, ruler } = this
    if (!picture) return
    const asked = ++this.#asked
    if (this.sheet === 'ruler' && !ruler) {
      this.points ??= firstPoints(picture.width, picture.height)
      this.#answer = null
      this.phase = 'asking'
      return
    }
    this.phase = 'measuring'
    this.come = 0
    this.problem = ''
    try {
      const corners = this.areCornersSet ? (this.corners ?? undefined) : undefined
      const answer = await this.#finder.measure(
        ruler ? { sheet: 'ruler', ruler } : { sheet: this.sheet, corners },
        (share) => (this.come = share),
      )
      if (asked !== this.#asked) return
      this.#answer = answer
      this.sheet = answer.sheet
      if (!ruler && !this.areCornersSet)
        this.corners = answer.corners ?? firstCorners(picture.width, picture.height)
      this.phase = 'measured'
    } catch (error) {
      this.#fell(error, asked)
    }
  }

  /** Another sheet: its corners are looked for anew, unless they were set by hand. */
  chooseSheet(sheet: SheetChoice): void {
    this.sheet = sheet
    void this.measure()
  }

  setCorners(corners: Corners): void {
    this.corners = corners
    this.areCornersSet = true
  }

  /** Moves a corner of the sheet, or a point on the ruler, inside the picture. */
  moveHandle(index: number, to: Spot): void {
    const { picture, corners, points } = this
    if (!picture) return
    if (this.sheet !== 'ruler') {
      if (corners) this.setCorners(withSpot(corners, index, to, picture))
      return
    }
    if (!points) return
    this.points = withSpot(points, index, to, picture)
    const [first, second] = this.#pointsSet
    this.#pointsSet = [first || index === 0, second || index === 1]
  }

  /** What lies between the points of the ruler, in mm. */
  setRulerLength(length: number): void {
    this.rulerLength = length
    void this.measure()
  }

  /** The picture as it is kept with the motif, where that is wished. Throws in words where it cannot be. */
  async kept(): Promise<KeptPhoto | undefined> {
    if (!this.isKept) return undefined
    const kept = await this.#finder.keep(this.sheet)
    if (!kept) throw new PictureError('cannot be made small enough to be kept')
    return kept
  }

  /** Looks for the corners again. */
  findCorners(): void {
    this.areCornersSet = false
    void this.measure()
  }

  set(byHand: ByHand): void {
    this.#byHand = { ...this.#byHand, ...byHand }
  }

  /** As another kind, or with other petals: sizes that were typed for the one before go with it. */
  takeAs(kind: PhotoMeasures['kind'], petals?: number): void {
    this.#byHand = { kind, ...(petals !== undefined && { petals }) }
  }

  /** Ends what is under way and forgets the picture. */
  cancel(): void {
    this.#asked++
    this.#finder.stop()
    this.picture?.shown.close()
    this.picture = null
    this.corners = null
    this.areCornersSet = false
    this.points = null
    this.#pointsSet = [false, false]
    this.#answer = null
    this.#byHand = {}
    this.problem = ''
    this.phase = 'none'
  }

  #fell(error: unknown, asked: number): void {
    if (asked !== this.#asked || error instanceof FinderStopped) return
    const { name } = this
    this.cancel()
    const why = error instanceof PictureError ? error.message : 'could not be measured'
    this.problem = `${name || 'The picture'} ${why}.`
  }
}
