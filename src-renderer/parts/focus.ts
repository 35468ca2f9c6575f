/** Where the keyboard goes on after something was added or a dialog has done its work. */
import { tick } from 'svelte'

/** The field for the name of an entry that was just added: it is what is typed next. */
export async function focusNameOf(id: string): Promise<void> {
  await tick()
  const entries = [...document.querySelectorAll<HTMLElement>('li[data-entry]')]
  const entry = entries.find(({ dataset }) => dataset.entry === id)
  const fields = [...(entry?.querySelectorAll<HTMLInputElement>('input[type="text"]') ?? [])]
  fields.find(({ labels }) => labels?.[0]?.textContent?.startsWith('Name of '))?.focus()
}

/** The first field with a label in the open place, and what stands in it: what was just made is looked at from there. */
export async function focusLabelled(label: string): Promise<void> {
  await tick()
  const fields = document.querySelectorAll<HTMLInputElement>('input[type="text"]')
  const field = [...fields].find(({ labels }) => labels?.[0]?.textContent?.trim() === label)
  field?.focus()
  field?.select()
}

/** The map: a dialog gives the keyboard back to what had it, which may be gone. */
export async function focusMap(): Promise<void> {
  await tick()
  document.querySelector<HTMLElement>('[role="application"]')?.focus()
}
