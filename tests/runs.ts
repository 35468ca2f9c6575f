/**
 * How often what is drawn by chance is drawn. Whoever demands kinds of tests, as `.ci/run` does, or draws other examples
 * gets all of it; `npm test` by itself draws the first third of the very same examples, which is enough to see a property
 * break. What stands there as a case of its own is always run.
 */
const { PETALYARD_REQUIRE, PETALYARD_SEED, PETALYARD_RUNS } = process.env
const all = Boolean(PETALYARD_REQUIRE || PETALYARD_SEED || PETALYARD_RUNS === 'all')

/** Of so many runs in all, how many there are in this one. */
export const runs = (most: number): number => (all ? most : Math.ceil(most / 3))
