/**
 * Electron's fuses as we ship it: what a program that only shows its own window needs none of is off in the binary
 * itself, where no switch and no variable turns it on again.
 */

/** By the name that Electron gives each. */
export const FUSES = {
  // ELECTRON_RUN_AS_NODE would make the program a Node that runs any script.
  RunAsNode: false,
  EnableCookieEncryption: true,
  // NODE_OPTIONS would load a script before ours.
  EnableNodeOptionsEnvironmentVariable: false,
  // --inspect would let anybody on the machine debug the main process.
  EnableNodeCliInspectArguments: false,
  // Macs and Windows compare the archive with what was packed; Linux has no such check yet.
  EnableEmbeddedAsarIntegrityValidation: true,
  OnlyLoadAppFromAsar: true,
  LoadBrowserProcessSpecificV8Snapshot: false,
  // Our pages come from a scheme of their own.
  GrantFileProtocolExtraPrivileges: false,
}

/** The fuse that drivers of tests need in a build for stories, which differs from what is shipped in it alone. */
export const FUSE_FOR_STORIES = 'EnableNodeCliInspectArguments'

/** How a fuse that is on stands in the binary. */
const ON = '1'.charCodeAt(0)

/** Sets the fuses that this Electron has, newer ones than it knows left out; `changed` are others than shipped. */
export async function setFuses(
  { flipFuses, getCurrentFuseWire, FuseV1Options, FuseVersion },
  program,
  changed = {},
) {
  const wire = await getCurrentFuseWire(program)
  const wished = Object.entries({ ...FUSES, ...changed })
    .map(([name, value]) => [FuseV1Options[name], value])
    .filter(([index]) => index in wire)
  await flipFuses(program, {
    version: FuseVersion.V1,
    resetAdHocDarwinSignature: process.platform === 'darwin',
    ...Object.fromEntries(wished),
  })
}

/** Which fuses are on in a program, by name; those that it does not have are absent. */
export async function readFuses({ getCurrentFuseWire, FuseV1Options }, program) {
  const wire = await getCurrentFuseWire(program)
  return Object.fromEntries(
    Object.keys(FUSES)
      .filter((name) => FuseV1Options[name] in wire)
      .map((name) => [name, wire[FuseV1Options[name]] === ON]),
  )
}
