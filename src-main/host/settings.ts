import { join } from 'node:path'
import { z } from 'zod'
import type { Settings, SettingsChange } from '../../shared-types/bridge'
import { FONT_LIMITS, keptFontSchema } from '../../shared-types/fonts'
import type { KeptFont } from '../../shared-types/fonts'
import { houseSchema, NO_HOUSE } from '../../shared-types/house'
import { USUAL_ZOOM, ZOOM_STEPS } from '../../shared-types/zoom'
import { SMALL_FILE } from '../documents/limits'
import { readRegularText } from '../documents/regular-file'
import type { Written } from '../documents/session/ports'

export const settingsSchema = z.strictObject({
  theme: z.enum(['system', 'light', 'dark']),
  zoom: z.number().int().min(ZOOM_STEPS[0]).max(ZOOM_STEPS.at(-1)!),
  units: z.enum(['metric', 'imperial']),
  terms: z.enum(['US', 'UK']),
  hand: z.enum(['right', 'left']),
  currency: z.string().regex(/^[A-Z]{3}$/),
  paper: z.enum(['A4', 'Letter']),
  house: houseSchema,
  fonts: z.array(keptFontSchema).max(FONT_LIMITS.count),
})

/** What a window may send. */
export const settingsChangeSchema = settingsSchema
  .omit({ fonts: true })
  .extend({ house: houseSchema.partial() })
  .partial()

/** Countries that print on Letter, measure in inches or write US terms, as far as defaults go (from memory). */
const LETTER_COUNTRIES = ['US', 'CA', 'MX', 'PH', 'CL', 'CO', 'VE']
const INCH_COUNTRIES = ['US', 'LR', 'MM']
const UK_TERM_COUNTRIES = ['GB', 'IE', 'AU', 'NZ', 'ZA', 'IN']
const CURRENCIES: Readonly<Record<string, string>> = {
  US: 'USD',
  CA: 'CAD',
  GB: 'GBP',
  AU: 'AUD',
  NZ: 'NZD',
  CH: 'CHF',
  SE: 'SEK',
  NO: 'NOK',
  DK: 'DKK',
  JP: 'JPY',
  IN: 'INR',
  ZA: 'ZAR',
  PL: 'PLN',
  CZ: 'CZK',
  TR: 'TRY',
  BR: 'BRL',
  MX: 'MXN',
}

/** What a person in this place most likely wants; all of it can be changed. `locale` as in "en-GB". */
export function defaultSettings(locale: string): Settings {
  const country = /[-_]([A-Za-z]{2})\b/.exec(locale)?.[1]?.toUpperCase() ?? ''
  return {
    theme: 'system',
    zoom: USUAL_ZOOM,
    units: INCH_COUNTRIES.includes(country) ? 'imperial' : 'metric',
    terms: UK_TERM_COUNTRIES.includes(country) ? 'UK' : 'US',
    hand: 'right',
    currency: CURRENCIES[country] ?? 'EUR',
    paper: LETTER_COUNTRIES.includes(country) ? 'Letter' : 'A4',
    house: NO_HOUSE,
    fonts: [],
  }
}

/** Settings in the data folder. Values that cannot be read fall back to their defaults, one by one. */
export class SettingsStore {
  #settings: Settings
  #isFirstStart = false
  /** Somebody chose something, or the language of the window is known. */
  #isChosen = false
  readonly #path: string
  readonly #write: (path: string, text: string) => Promise<Written>

  constructor(dataFolder: string, locale: string, write: (path: string, text: string) => Promise<Written>) {
    this.#path = join(dataFolder, 'settings.json')
    this.#settings = defaultSettings(locale)
    this.#write = write
  }

  get current(): Settings {
    return this.#settings
  }
  /** Nothing was ever stored here before. */
  get isFirstStart(): boolean {
    return this.#isFirstStart
  }

  async load(): Promise<void> {
    let text: string
    try {
      text = await readRegularText(this.#path, SMALL_FILE)
    } catch {
      this.#isFirstStart = true
      await this.#write(this.#path, JSON.stringify(this.#settings, null, 2))
      return
    }
    this.#settings = { ...this.#settings, ...readable(text) }
  }

  /** At the very first start: what a person who reads in this language most likely wants, as a browser says it. */
  async startIn(locale: string): Promise<void> {
    if (!this.#isFirstStart || this.#isChosen) return
    await this.change(defaultSettings(locale))
  }

  async change({ house, ...change }: SettingsChange & { fonts?: readonly KeptFont[] }): Promise<Settings> {
    this.#isChosen = true
    const told = Object.entries(house ?? {}).filter(([, value]) => value !== undefined)
    const kept = { ...this.#settings.house, ...Object.fromEntries(told) }
    this.#settings = { ...this.#settings, ...change, house: kept }
    await this.#write(this.#path, JSON.stringify(this.#settings, null, 2))
    return this.#settings
  }
}

/** The fields that are as they have to be: one that is not, or that a version before lacked, costs no other. */
function goodOf(shape: Readonly<Record<string, z.ZodType>>, stored: unknown): Record<string, unknown> {
  if (typeof stored !== 'object' || stored === null) return {}
  const fields = new Map(Object.entries(stored))
  const good = Object.entries(shape).filter(([key, schema]) => schema.safeParse(fields.get(key)).success)
  return Object.fromEntries(good.map(([key]) => [key, fields.get(key)]))
}

function readable(text: string): Partial<Settings> {
  try {
    const stored = z.record(z.string(), z.unknown()).parse(JSON.parse(text))
    const known = { ...stored, house: { ...NO_HOUSE, ...goodOf(houseSchema.shape, stored['house']) } }
    return settingsSchema.partial().parse(goodOf(settingsSchema.shape, known))
  } catch {
    return {}
  }
}
