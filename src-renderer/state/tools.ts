/** Which tools the drawing has for each kind of project, and the one that is in force. */
import type { LayoutKind } from './edits/layout-kind'
import type { Tool } from './view.svelte'

/** The first one is in force until another is chosen. */
export const TOOLS_OF: Readonly<Record<LayoutKind, readonly Tool[]>> = {
  blanket: ['select', 'paint', 'turn'],
  garland: ['select', 'paint'],
  applique: ['move', 'select', 'paint', 'turn', 'line'],
}

export const TOOL_NAMES: Readonly<Record<Tool, string>> = {
  select: 'Select',
  paint: 'Paint',
  turn: 'Rotate',
  move: 'Move',
  line: 'Line',
}

/** The chosen tool where this kind of project has it, else the first. */
export function toolFor(kind: LayoutKind, chosen: Tool | null): Tool {
  const tools = TOOLS_OF[kind]
  return chosen && tools.includes(chosen) ? chosen : tools[0]!
}
