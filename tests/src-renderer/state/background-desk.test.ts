/** What keeps the answer to a key press quick, without a clock: what is sent, in which order, and what is put away. */
import { describe, expect, it } from 'vitest'
import type { Plan } from '../../../shared-types/plan'
import type { BlanketLayout, Project } from '../../../shared-types/project'
import { createPlanner, planProject } from '../../../src-core/plan'
import type { Planner } from '../../../src-core/plan'
import { openDesk } from '../../../src-renderer/state/background-desk'
import type { Message, Question } from '../../../src-renderer/state/background-work'
import { patchBlanket } from '../../../src-renderer/state/edits/layout'
import { bytesOf, unpacked } from '../../../src-renderer/state/plan-parcel'
import { SMALL } from '../projects'
import { settled } from '../../../src-core/settled'
import { firstOf, telling, toldAs, withFields } from '../../../src-core/telling'

const sized = (rows: number): Project => patchBlanket(SMALL, { columns: 20, rows })
const ask = (project: Project): Question => ({ lane: 'document', kind: 'plan', project })

/** A desk whose worker looks up when it is told to. */
function desk(makePlanner: () => Planner = createPlanner) {
  const posted: Message[] = []
  const told: string[] = []
  const up: (() => void)[] = []
  const clock = { now: 0 }
  const paused: (() => void)[] = []
  const take = openDesk({
    makePlanner,
    post: (message) => {
      posted.push(message)
      told.push(`${message.id} ${'numbers' in message ? 'numbers' : message.answer.value.kind}`)
    },
    lookUp: () => new Promise((resolve) => up.push(resolve)),
    now: () => clock.now,
    pause: () => new Promise((resolve) => paused.push(resolve)),
  })
  /** Lets the time go by that it waits for another change. */
  const wait = async () => {
    for (const resolve of paused.splice(0)) resolve()
    await new Promise((resolve) => setTimeout(resolve))
  }
  const lookUp = async () => {
    for (const resolve of up.splice(0)) resolve()
    await new Promise((resolve) => setTimeout(resolve))
  }
  return { take, told, posted, lookUp, wait, clock }
}

describe('the desk of the planning worker', () => {
  it('sends numbers as soon as they are known, and looks up before it goes on with the plan', async () => {
    const { take, told, lookUp } = desk()
    take(1, ask(sized(15)))
    expect(told).toEqual(['1 numbers'])
    await lookUp()
    expect(told).toEqual(['1 numbers', '1 plan'])
  })

  it('puts away the plan of a project that has changed since, and numbers that nobody waits for', async () => {
    const { take, told, lookUp } = desk()
    take(1, ask(sized(15)))
    take(2, ask(sized(16)))
    take(3, ask(sized(17)))
    await lookUp()
    expect(told).toEqual(['1 numbers', '1 overtaken'])
    await lookUp()
    expect(told.slice(2)).toEqual(['2 overtaken', '3 numbers'])
    await lookUp()
    expect(told.slice(4)).toEqual(['3 plan'])
  })

  it('rehearses what keys change while nobody asks, tells nothing of it, and lets every question in first', async () => {
    const asked: Project[] = []
    const watched = (): Planner => {
      const planner = createPlanner()
      return { ...planner, numbers: (project) => (asked.push(project), planner.numbers(project)) }
    }
    const { take, told, lookUp } = desk(watched)
    take(1, ask(sized(40)))
    await lookUp()
    await lookUp()
    expect(asked).toHaveLength(2)
    const [first, changed] = asked.map(({ layout }) => layout as BlanketLayout)
    expect([first!.rows, changed!.rows]).toEqual([40, 30])
    take(2, ask(sized(41)))
    await lookUp()
    expect(told).toEqual(['1 numbers', '1 plan', '2 numbers'])
    for (let looks = 0; looks < 60; looks++) await lookUp()
    expect(told).toEqual(['1 numbers', '1 plan', '2 numbers', '2 plan'])
    const rehearsed = asked.length
    take(3, ask(sized(42)))
    for (let looks = 0; looks < 9; looks++) await lookUp()
    expect(asked).toHaveLength(rehearsed + 1)
  })

  it('rehearses for a second and no longer, however long a project takes', async () => {
    let rehearsed = 0
    const slow = (): Planner => {
      const planner = createPlanner()
      const numbers = (project: Project) => {
        clock.now += 300
        rehearsed++
        return planner.numbers(project)
      }
      return { ...planner, numbers }
    }
    const { take, told, lookUp, clock } = desk(slow)
    take(1, ask(sized(15)))
    for (let looks = 0; looks < 60; looks++) await lookUp()
    expect(told).toEqual(['1 numbers', '1 plan'])
    // The one that was asked for, and what a second holds.
    expect(rehearsed).toBe(1 + 4)
  })

  it('finishes a plan now and then while changes come without end', async () => {
    const { take, told, lookUp, clock } = desk()
    take(1, ask(sized(11)))
    for (let id = 2; id <= 30; id++) {
      take(id, ask(sized(10 + id)))
      clock.now += 50
      await lookUp()
      await lookUp()
    }
    const plans = told.filter((line) => line.endsWith('plan'))
    expect(plans.length).toBeGreaterThanOrEqual(2)
    expect(plans.length).toBeLessThanOrEqual(4)
  })

  describe('while a key is held, where a plan takes longer than the next change', () => {
    const held = async (takes = 40, pace = 33) => {
      const opened = desk(() => {
        const planner = createPlanner()
        return { ...planner, plan: (project) => ((clock.now += takes), planner.plan(project)) }
      })
      const { take, lookUp, clock } = opened
      take(1, ask(sized(11)))
      while (!opened.told.includes('1 plan')) await lookUp()
      clock.now += pace
      take(2, ask(sized(12)))
      for (let looks = 0; looks < 5; looks++) await lookUp()
      return opened
    }

    it('waits for that change before it begins the plan, and sends its numbers at once', async () => {
      const { take, told, lookUp } = await held()
      expect(told).toEqual(['1 numbers', '1 plan', '2 numbers'])
      take(3, ask(sized(13)))
      for (let looks = 0; looks < 2; looks++) await lookUp()
      expect(told.slice(3)).toEqual(['2 overtaken', '3 numbers'])
    })

    it('waits for changes by hand where a plan takes longer than these, and for none of smaller ones', async () => {
      const [large, small] = [await held(300, 250), await held(40, 250)]
      expect(large.told.slice(2)).toEqual(['2 numbers'])
      expect(small.told.slice(2)).toEqual(['2 numbers', '2 plan'])
    })

    it('makes the plan where none comes', async () => {
      const { told, wait, lookUp } = await held()
      await wait()
      await lookUp()
      expect(told.slice(3)).toEqual(['2 plan'])
    })

    it('makes it at once for a change that comes by itself', async () => {
      const { take, told, lookUp, wait, clock } = await held()
      await wait()
      clock.now += 250
      take(3, ask(sized(13)))
      for (let looks = 0; looks < 5; looks++) await lookUp()
      expect(told.slice(4)).toEqual(['3 numbers', '3 plan'])
    })
  })

  describe('while a long plan is in hand', () => {
    const FALLS = 'falls over'

    /** A desk that reads the clock forward by so many ms each time that a step of the work is told. */
    function slowly(each: number) {
      const opened = desk(() => {
        const planner = createPlanner()
        return {
          ...planner,
          numbers: (project) => {
            if (project.title === FALLS) throw new Error('fell over')
            return planner.numbers(project)
          },
          plan: (project) => {
            const plan = planner.plan(project)
            const steps = function* () {
              for (const step of plan.order) {
                opened.clock.now += each
                yield step
              }
            }
            return withFields(plan, toldAs('order', telling(steps)))
          },
        }
      })
      return opened
    }
    const upTo = async ({ told, lookUp }: ReturnType<typeof desk>, line: string) => {
      for (let looks = 0; looks < 200 && !told.includes(line); looks++) await lookUp()
      expect(told).toContain(line)
    }

    it('puts it away as soon as a change comes in the midst of it', async () => {
      const opened = slowly(0.2)
      opened.take(1, ask(sized(50)))
      await opened.lookUp()
      opened.take(2, ask(sized(51)))
      await upTo(opened, '2 numbers')
      expect(opened.told).toEqual(['1 numbers', '1 overtaken', '2 numbers'])
    })

    it('sends the numbers of a change before it goes on, where the map stood still for long', async () => {
      const opened = slowly(1)
      const { take, told, lookUp, clock } = opened
      take(1, ask(sized(50)))
      await lookUp()
      clock.now += 500
      take(2, ask(sized(51)))
      take(3, ask(sized(52)))
      await lookUp()
      // Of two that wait, only those of the last are of use.
      expect(told).toEqual(['1 numbers', '3 numbers'])
      const from = clock.now
      take(4, ask(sized(53)))
      await lookUp()
      expect(told).toEqual(['1 numbers', '3 numbers', '4 numbers'])
      // It was in hand for a few ms meanwhile, not to its end.
      expect(clock.now - from).toBeLessThan(300)
      await upTo(opened, '1 plan')
      expect(told).toEqual(['1 numbers', '3 numbers', '4 numbers', '1 plan'])
      await lookUp()
      opened.clock.now += 1_000
      await upTo(opened, '2 overtaken')
      await upTo(opened, '3 overtaken')
    })

    it('sends a plan after that which is the same as any', async () => {
      const opened = slowly(1)
      const { take, posted, lookUp, clock, wait } = opened
      take(1, ask(sized(50)))
      await lookUp()
      clock.now += 500
      take(2, ask(sized(51)))
      await upTo(opened, '1 plan')
      await lookUp()
      await wait()
      await upTo(opened, '2 plan')
      let plan: Plan | undefined
      for (const [index, rows] of [50, 51].entries()) {
        const answer = posted.flatMap((message) => ('answer' in message ? [message.answer.value] : []))[index]
        if (answer?.kind !== 'plan') throw new Error('no plan came')
        plan = unpacked(answer.change, settled(sized(rows)), plan)
        expect(plan).toEqual(planProject(sized(rows)))
      }
      // Numbers of the second came once.
      expect(opened.told).toEqual(['1 numbers', '2 numbers', '1 plan', '2 plan'])
    })

    it('puts it away where the engine falls over the change', async () => {
      const opened = slowly(1)
      const { take, told, lookUp, clock } = opened
      take(1, ask(sized(50)))
      await lookUp()
      clock.now += 500
      take(2, ask({ ...SMALL, title: FALLS }))
      await upTo(opened, '2 failed')
      expect(told).toEqual(['1 numbers', '1 overtaken', '2 failed'])
    })

    it('finishes it where the change has no numbers, so that one is finished at last', async () => {
      const opened = slowly(1)
      const { take, told, lookUp, clock } = opened
      take(1, ask(sized(50)))
      await lookUp()
      clock.now += 500
      take(2, ask({ ...SMALL, layout: undefined }))
      await upTo(opened, '2 plan')
      expect(told).toEqual(['1 numbers', '1 plan', '2 plan'])
    })
  })

  it('sends numbers that are light however many motifs there are, and plans whose long parts are texts', async () => {
    const { take, posted, lookUp } = desk()
    const project = sized(50)
    take(1, ask(project))
    await lookUp()
    const [numbers, whole] = posted
    // A list of 1,000 motifs would be ten times this.
    expect(JSON.stringify(numbers).length).toBeLessThan(4_000)
    if (!whole || !('answer' in whole) || whole.answer.value.kind !== 'plan') throw new Error('no plan came')
    const { change } = whole.answer.value
    expect(Object.keys(change.long)).toEqual(expect.arrayContaining(['motifs', 'joins', 'order']))
    // The account of one motif is the largest of what is copied thing by thing.
    expect(JSON.stringify({ ...change.light, motif: null }).length).toBeLessThan(8_000)
    expect(unpacked(change, settled(project))).toEqual(planProject(project))
  })
})

describe('a plan on its way', () => {
  const MADE = settled({ format: 'petalyard-project', version: 1 })

  it('is read when it is looked at, once, and keeps what did not change', () => {
    const first = unpacked(
      { light: { ends: 1 }, long: { joins: [bytesOf([{ x: 1 }])], order: [new ArrayBuffer(1)] } },
      MADE,
    )
    const second = unpacked({ light: { ends: 2 }, long: { motifs: [bytesOf([])] } }, MADE, first)
    expect(second.joins).toEqual([{ x: 1 }])
    expect(second.joins).toBe(first.joins)
    expect([first.ends, second.ends]).toEqual([1, 2])
    expect(() => second.order).toThrow(SyntaxError)
  })

  it('reads no more of a long list than its first items where these are asked for', () => {
    const step = (motif: string) => ({ kind: 'motif', motif, free: [], joins: [], words: '', pattern: '' })
    const pieces = [bytesOf([step('a'), step('b')]), bytesOf([step('c')]), new ArrayBuffer(1)]
    const plan = unpacked({ light: {}, long: { order: pieces } }, MADE)
    const first = (most: number) => firstOf(plan, 'order', most).map(({ motif }) => motif)
    expect([first(1), first(3), first(2)]).toEqual([['a'], ['a', 'b', 'c'], ['a', 'b']])
    expect(() => plan.order).toThrow(SyntaxError)
    expect(firstOf({ list: [1, 2, 3] }, 'list', 2)).toEqual([1, 2])
  })
})
