/** Renders a part of the window on a project in memory. */
import { render } from '@testing-library/svelte'
import type { Component } from 'svelte'
import type { Project } from '../../shared-types/project'
import { memoryHost } from './memory-bridge'
import type { MemoryChoice } from './memory-bridge'
import { WindowState } from '../../src-renderer/state/window.svelte'
import WithWindow from './WithWindow.svelte'

/** The component, its window and its host. */
export async function inWindow<Props extends Record<string, unknown>>(
  part: Component<Props>,
  props: Props,
  project: Project,
  choice: MemoryChoice = {},
) {
  const host = memoryHost(project, choice)
  const opened = await WindowState.open(host.bridge)
  if (opened.outcome !== 'done') throw new Error('the window did not open')
  const app = opened.value
  render(WithWindow, { props: { app, part: part as Component<Record<string, unknown>>, props } })
  app.shown()
  return { app, host }
}
