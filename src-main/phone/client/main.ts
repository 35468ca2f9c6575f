/** The page on the phone: the map, the motif that is selected, the list, and the marks. */
import { unpacked } from '../packed'
import { showCard } from './card'
import { completeDrawing } from './drawing'
import { byId, text } from './dom'
import { showHome } from './home'
import { showList } from './list'
import { showMap } from './map'
import { createMarks } from './marks'

const data = unpacked(text(byId('data', HTMLElement)))
completeDrawing(data.drawing)
const marks = createMarks(data)
const card = showCard(data, marks, (at) => select(at, true))
const map = showMap(data, marks, (at) => select(at, false))
const list = showList(data, marks, (at) => {
  select(at, true)
  byId('card', HTMLElement).scrollIntoView({ block: 'nearest' })
})
const home = showHome(data, marks)

function select(at: number, bring: boolean): void {
  map.select(at, bring)
  card.show(at)
}

function refresh(): void {
  map.refresh()
  card.refresh()
  list.refresh()
  home.refresh()
}

marks.listen(refresh)
refresh()
