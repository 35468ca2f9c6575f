import { openBenchPage } from './drawing'
const [,, what = 'all'] = process.argv
const { page, close } = (await openBenchPage({ width: 900, height: 660 }, 1))!
page.on('pageerror', (e) => console.log('pageerror', e.message)); page.on('console', (m) => console.log(m.text()))
try {
  const shot = async (name: string) => { await page.waitForTimeout(700); await page.screenshot({ path: `/tmp/shots/${name}.png` }) }
  await page.evaluate(() => bench.startDrawing({ columns: 12, rows: 10, petals: 6 }))
  await shot('fit-light')
  await page.evaluate(() => { bench.show({ showLabels: true, selection: new Set(['5,7', '5,8']), focus: '5,7', flagged: new Set(['2,2']) }); bench.drawing().zoomBy(2.4) })
  await shot('mid-light')
  await page.evaluate(() => bench.drawing().zoomBy(3))
  await shot('close-light')
  await page.evaluate(() => { bench.theme('dark'); bench.drawing().fit() })
  await shot('fit-dark')
  await page.evaluate(() => { bench.drawing().zoomBy(3) })
  await shot('mid-dark')
  await page.evaluate(() => { bench.theme('light'); bench.startDrawing({ columns: 50, rows: 50 }) })
  await shot('many-light')
} finally { await close() }
