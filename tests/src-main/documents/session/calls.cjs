/**
 * Loaded before a module that saves: once `countCalls()` was called, whatever it asks of the file system that changes
 * something is told, a line each, on the error output; before the one that CALL_TO_DIE_AT numbers, the process ends as
 * by a kill. With CALL_IN_HALF it ends within that one: half of what it writes or copies is there by then.
 */
const { Buffer } = require('node:buffer')
const fs = require('node:fs')
const { syncBuiltinESMExports } = require('node:module')

const CHANGING = ['open', 'write', 'fsync', 'chmod', 'chown', 'rename', 'unlink', 'mkdir']
const CHANGING_PROMISES = ['open', 'writeFile', 'copyFile', 'rename', 'rm', 'utimes', 'mkdir', 'chmod']
const dieAt = Number(process.env.CALL_TO_DIE_AT ?? 0)
const isHalfDone = process.env.CALL_IN_HALF === '1'
const { writeSync, readFileSync, writeFileSync } = fs

let count = 0
const paths = new Map()

const halfOf = (bytes) => bytes.subarray(0, bytes.length >> 1)
const half = {
  write: (file, bytes, from, length, at) => writeSync(file, bytes, from, length >> 1, at),
  writeFile: (path, text, options) => writeFileSync(path, halfOf(Buffer.from(text)), options),
  copyFile: (from, to) => writeFileSync(to, halfOf(readFileSync(from))),
}

function told(name, words, ...of) {
  count++
  if (count === dieAt) {
    if (isHalfDone) half[name](...words)
    process.kill(process.pid, 'SIGKILL')
    for (;;);
  }
  writeSync(2, `${name} ${of.join(' ')}\n`)
}

const isToRead = (flags) =>
  flags === undefined || flags === 'r' || (typeof flags === 'number' && (flags & 3) === 0)
const nameOf = (word) => (typeof word === 'number' ? paths.get(word) : String(word))

globalThis.countCalls = async () => {
  const handle = await fs.promises.open(__filename)
  const handles = Object.getPrototypeOf(handle)
  await handle.close()
  for (const name of CHANGING) {
    const real = fs[name]
    fs[name] = (...words) => {
      if (name === 'open') {
        const [path, flags] = words
        if (!isToRead(flags)) told(name, words, path)
        const answer = words.at(-1)
        return real(...words.slice(0, -1), (error, number) => {
          if (!error) paths.set(number, String(path))
          answer(error, number)
        })
      }
      told(name, words, nameOf(words[0]), ...(name === 'rename' ? [words[1]] : []))
      return real(...words)
    }
  }
  for (const name of CHANGING_PROMISES) {
    const real = fs.promises[name]
    fs.promises[name] = async (...words) => {
      if (name !== 'open') {
        told(name, words, words[0], ...(name === 'rename' || name === 'copyFile' ? [words[1]] : []))
        return real(...words)
      }
      if (!isToRead(words[1])) told(name, words, words[0])
      const opened = await real(...words)
      paths.set(opened, String(words[0]))
      return opened
    }
  }
  const { sync } = handles
  handles.sync = function () {
    told('fsync', [], paths.get(this))
    return sync.call(this)
  }
  syncBuiltinESMExports()
}
