/** Keeps and saves a project once, told to end at one of its calls to the file system (calls.cjs): FOLDER FILE. */
import { KeptProjects } from '../../../../src-main/documents/session/kept'
import { OwnFolder } from '../../../../src-main/documents/session/own-folder'
import { NEVER, projectText } from './texts'
import { projectFiles, writeAtomically } from '../../../../src-main/documents/session/project-files'
import { ProjectSession } from '../../../../src-main/documents/session/session'

declare const countCalls: () => Promise<void>

async function run(folder: string, path: string): Promise<void> {
  const own = new OwnFolder(folder, { writeAtomically })
  const kept = new KeptProjects(own, { now: Date.now })
  await kept.start()
  const read = await projectFiles.open(path)
  if (!read.ok) throw new Error(read.problem.message)
  const session = new ProjectSession(
    { ...read, id: 'one', origin: 'file', path, revision: 0, savedRevision: 0 },
    { files: projectFiles, kept, pace: NEVER, now: Date.now, onKeeping: () => undefined },
  )
  await countCalls()
  await session.keep({ revision: 1, text: projectText('First') })
  process.stdout.write('First\n')
  await session.save({ revision: 2, text: projectText('Second') })
  process.stdout.write('Second\n')
  await session.save({ revision: 3, text: projectText('Third') })
  process.stdout.write('Third\n')
  await session.close()
  process.exit(0)
}

void run(process.argv[2]!, process.argv[3]!)
