/**
 * `npm test`: types, lint, format, builds and every test that this machine can run. The last lines name what was
 * skipped and why; the very last one is the count. `PETALYARD_REQUIRE=desktop,browser,pdf,package` turns a skip into
 * a failure. Arguments go on to vitest (`npm test -- tests/src-core`).
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { fileURLToPath } from 'node:url'
import { findVirtualDisplay, hasDisplay, missingCapabilities } from './capabilities.mjs'
import { bin, checkSources, remembered, run } from './check-sources.mjs'

const root = fileURLToPath(new URL('..', import.meta.url))

/** Runs vitest without the files that need what is missing. */
async function runTests(missing, args, how) {
  const folder = mkdtempSync(join(tmpdir(), 'petalyard-test-'))
  try {
    const report = join(folder, 'report.json')
    const excludes = missing.flatMap((need) => ['--exclude', `**/*.${need}.test.ts`])
    const vitest = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
    const words = [bin('vitest'), ...vitest, ...excludes, ...args]
    const hasWindows = !missing.includes('desktop') || !missing.includes('package')
    const virtual = hasWindows && !hasDisplay() ? findVirtualDisplay() : null
    const [program, ...rest] = virtual ? [virtual, '-a', '-s', '-screen 0 1920x1080x24', ...words] : words
    const { code, said } = await run(program, rest, how)
    if (said) console.log(said)
    const counted = countTests(report)
    // Something went wrong beside the tests.
    if (code === 0 || counted.failed > 0) return counted
    return { ...counted, failed: 1, failures: [`vitest ended with ${code}, and no test failed`] }
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

/**
 * Everything, as quickly as the machine can. Stories come one after the other and often wait for a clock or a window;
 * all else takes the processors in the meantime, and yields to them, so that they see no busier machine than alone.
 */
async function runAll(missing) {
  // The builds are those that stories start: made once here, not by each of them that finds none.
  const build = checkSources([['build']])
  // How a file is formatted, and what its lint says, hangs on itself alone: no rule asks for types.
  const lint = ['lint', ...remembered('eslint')]
  const format = ['format:check', ...remembered('prettier')]
  const looks = checkSources([['types'], lint, format], { aside: true })
  const built = await build
  const stories = runTests(missing, ['--project', 'stories'])
  const looked = await looks
  const others = ['core', 'main', 'renderer'].flatMap((name) => ['--project', name])
  const rest = await runTests(missing, others, { shown: true, aside: true })
  return sum([built, looked, rest, await stories])
}

const sum = (counts) => ({
  passed: counts.reduce((all, { passed }) => all + passed, 0),
  failed: counts.reduce((all, { failed }) => all + failed, 0),
  failures: counts.flatMap(({ failures }) => failures ?? []),
})

/**
 * Counts of a vitest report, and what failed with its reason. A file that broke before its tests, and a test that was
 * skipped, are failures.
 */
function countTests(report) {
  try {
    const { testResults } = JSON.parse(readFileSync(report, 'utf8'))
    const failures = testResults.flatMap((file) => {
      const name = relative(root, file.name)
      const failing = file.assertionResults.filter(({ status }) => status !== 'passed')
      if (file.status === 'failed' && !failing.some(({ status }) => status === 'failed'))
        return [`${name}\n${indented(file.message)}`]
      return failing.map(
        (test) =>
          `${name} > ${test.fullName} (${test.status})\n${indented(test.failureMessages?.join('\n'))}`,
      )
    })
    const tests = testResults.flatMap((file) => file.assertionResults)
    const passed = tests.filter((test) => test.status === 'passed').length
    return { passed, failed: failures.length, failures }
  } catch (error) {
    return { passed: 0, failed: 1, failures: [`no report of the tests can be read: ${error}`] }
  }
}

/** The first lines of a reason: the assertion, and where it stands. */
const indented = (reason = '') =>
  reason
    .split('\n')
    .filter((line) => line.trim() && !line.includes('node_modules'))
    .slice(0, 12)
    .map((line) => `    ${line}`)
    .join('\n')

const countFiles = (need) =>
  readdirSync(join(root, 'tests'), { recursive: true }).filter((name) => name.endsWith(`.${need}.test.ts`))
    .length

const reasons = Object.entries(missingCapabilities()).filter(([, reason]) => reason !== null)
const known = new Set(Object.keys(missingCapabilities()))
const required = (process.env.PETALYARD_REQUIRE ?? '')
  .split(',')
  .map((word) => word.trim())
  .filter(Boolean)
const strangers = required.filter((need) => !known.has(need))
if (strangers.length > 0) {
  console.error(`PETALYARD_REQUIRE knows ${[...known].join(', ')}, not ${strangers.join(', ')}`)
  process.exit(2)
}

const args = process.argv.slice(2)
const missing = reasons.map(([need]) => need)
const counts = await (args.length === 0 ? runAll(missing) : runTests(missing, args, { shown: true }))

console.log()
// Again, and last: whoever sees only the end of a long run still sees what failed.
for (const failure of counts.failures) console.log(`✗ ${failure}`)
let lacking = 0
for (const [need, reason] of reasons) {
  const demanded = required.includes(need)
  if (demanded) lacking++
  console.log(`${demanded ? 'Missing' : 'Skipped'}: ${countFiles(need)} ${need} test files: ${reason}`)
}
const failed = counts.failed + lacking
console.log(`${counts.passed} passed, ${failed} failed`)
process.exitCode = failed === 0 ? 0 : 1
