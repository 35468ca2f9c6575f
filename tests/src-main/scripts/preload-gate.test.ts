import { describe, expect, it } from 'vitest'

const gate = new URL('../../../scripts/preload-gate.mjs', import.meta.url).href
const { preloadStrangers } = (await import(gate)) as { preloadStrangers: (text: string) => string[] }

describe('the gate of the preload', () => {
  it('lets through what a sandboxed preload may ask for', () => {
    expect(preloadStrangers('let e = require("electron"); require(\'node:url\'); require("events")')).toEqual(
      [],
    )
  })

  it.each([
    ['let fs = require("node:fs")', ['node:fs']],
    ["require('./chunk-abc.cjs'); require('./chunk-abc.cjs')", ['./chunk-abc.cjs']],
    ['import("./late.cjs")', ['import(']],
    ['require(name)', ['require(n']],
  ])('stops %s', (text, strangers) => {
    expect(preloadStrangers(text)).toEqual(strangers)
  })
})
