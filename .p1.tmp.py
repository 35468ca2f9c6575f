import re
p='src-renderer/places/motif/rounds/RoundsEditor.svelte'
s=open(p).read()
i=s.index("      edited.change(`paste ${counted(taken.rounds.length, 'round')}`, (before) => {")
j=s.index("    return true\n",i)
print(s[i:j])
s=s[:i]+"""      edited.change(`paste ${counted(taken.rounds.length, 'round')}`, (project) =>
        edits.pasteRounds(project, motif.id, index, taken),
      )
"""+s[j:]
open(p,'w').write(s)
p='src-renderer/places/motif/rounds/edits.ts'
s=open(p).read()
s+='''
/** Puts a block in after the round at `index`, of which nothing stays where nothing is written there. */
export function pasteRounds(before: Project, id: string, index: number, taken: TakenApart): Project {
  const project = addFromBlock(before, id, taken)
  const motif = findMotif(project, id)
  const at = motif?.kind === 'rounds' ? motif.rounds?.[index] : undefined
  if (!motif || !at) return before
  const { rounds, named } = roundsOf(taken, [at], slotsOf(motif), settled(project).terms)
  const next = insertRounds(project, id, index + 1, rounds, named)
  return at.work.trim() === '' ? removeRound(next, id, index) : next
}
'''
s=s.replace("export function roundsOf(","function roundsOf(").replace("export const addFromBlock","const addFromBlock")
open(p,'w').write(s)
