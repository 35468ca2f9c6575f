/** The door of the loopback server: hands in the token behind the # of its address, and goes on to the window. */
import { ENTRY, KEY_PLACE, LOST_MARK, TOKEN_MARK } from './envelope'
import type { Admission } from './envelope'

async function enter(): Promise<void> {
  if (location.hash === LOST_MARK)
    return show(
      'This tab has no key. Go on in the tab that Petalyard opened, or press Enter in the terminal where Petalyard runs for another address.',
    )
  const token = location.hash.startsWith(TOKEN_MARK) ? location.hash.slice(TOKEN_MARK.length) : ''
  // Gone from the address bar: loading this page again does not use it twice.
  history.replaceState(null, '', location.pathname)
  const response = await fetch(ENTRY, { method: 'POST', body: token })
  if (!response.ok) return show(await response.text())
  const { key } = (await response.json()) as Admission
  try {
    // In no address (a browser writes those into its list of visited pages), and for this tab alone.
    sessionStorage.setItem(KEY_PLACE, key)
  } catch {
    return show(
      'This browser keeps nothing for pages. Let it keep data for 127.0.0.1, and press Enter in the terminal where Petalyard runs for another address.',
    )
  }
  location.replace('/')
}

function show(words: string): void {
  const [line] = document.getElementsByTagName('p')
  if (line) line.textContent = words
}

const knock = () =>
  void enter().catch(() => show('Petalyard does not answer. Start it again in the terminal.'))

// The next address, typed into the tab that shows this page, is no other page to a browser.
addEventListener('hashchange', knock)
// A browser that only guesses where its user wants to go uses nothing up.
if ((document as { prerendering?: boolean }).prerendering)
  document.addEventListener('prerenderingchange', knock, { once: true })
else knock()
