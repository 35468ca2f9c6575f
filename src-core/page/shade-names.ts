/**
 * Colours of the words that skeins are named by, beside the names of colours themselves: things that everybody knows the
 * colour of. Common practice, no source; the values are ours, for the screen, and any other one is chosen by hand.
 * Reading does not take them for colours: "shell", "berry" and "oak" mean something else on many a page.
 */
import { colourNamed, shaded } from './colour-names'

/** A word and its colour, then the next one. */
const SHADES: ReadonlyMap<string, string> = new Map(
  [
    // Whites and naturals
    'snow #f8f8f6 milk #f6f1e4 pearl #ece7dd bone #e6dcc6 shell #f1ddd2 chalk #f1efe8 vanilla #f3e6bf',
    'butter #f3dd92 buttermilk #f5ebc4 eggshell #efe7d3 parchment #ecdfc0 oatmeal #d8c9ab',
    'porridge #ddd0b6 straw #e0c878 porcelain #eceeec alabaster #efeae0',
    // Yellows and oranges
    'sunshine #f6cf3f sunflower #f0b92c daffodil #f5d547 primrose #f3e58c buttercup #f4cd3a maize #edc75a',
    'corn #eecb5c amber #d98f22 ochre #c48a2c quince #dcb83c marigold #eb9a25 tangerine #ee8a33',
    'pumpkin #d97428 mango #f0a23a melon #f2a583 carrot #e2812f ginger #b9692e paprika #bd4a2c',
    'terracotta #bd6545 copper #b06a43 cinnamon #a5633b caramel #b9793f toffee #9c6536 biscuit #d8b98a',
    'fudge #a5794f chestnut #7a452e',
    // Reds and pinks
    'scarlet #c92a2a cherry #b02338 ruby #a11c3c poppy #d43a2c cranberry #94263f berry #8f2c56',
    'raspberry #b53460 strawberry #d8485a mulberry #76345c beetroot #7c2448 garnet #7a1f33 merlot #642036',
    'bordeaux #652033 oxblood #5f1e22 pomegranate #a42a45 blush #eec3bd blossom #f2c1cd petal #f0c4cc',
    'candyfloss #f2a9c4 flamingo #ee9a9c shrimp #efa08c watermelon #e3606a rhubarb #cf7585',
    'fondant #eeb1c4 peony #d86a97 geranium #d63a44 cerise #c42f6a carnation #f0a4b4 dusk #8d7c9a',
    'mauve #b08aa6',
    // Purples
    'heather #9b80a3 grape #5e3a73 aubergine #432744 eggplant #432744 damson #4e2c50 amethyst #8e66b0',
    'wisteria #a893cd iris #6a5aa8 pansy #5b3589 fig #5a3a4c bramble #4f2a48 blackberry #40263f',
    'foxglove #a4619a periwinkle #8f97d2 hyacinth #7f7cc2',
    // Blues
    'cornflower #6285c9 bluebell #6a76bd forget #8fb4e0 cobalt #2450a0 royal #2a4a9c sapphire #1f4a8c',
    'ultramarine #2b3f9a ocean #2c6486 sea #3f7f94 marine #274b6b midnight #1f2a44 ink #22304a',
    'petrol #1f5560 peacock #1c6f7e kingfisher #1a7fa0 lagoon #3aa0a6 storm #5b6775 rain #8799a6',
    'lake #4d7f96 duck #2d6f77 cloud #dbe1e4 frost #dce8ec glacier #bcd8e2 airforce #5d7a96 jeans #4a6484',
    // Greens
    'seafoam #a6d8c4 foam #c5e4d8 jade #4aa17c emerald #1f8a5b bottle #1d4d3c forest #2f5738 pine #2c5545',
    'fir #2a4f3c spruce #3c6a60 ivy #39603c holly #24523a leaf #6a9a45 grass #5f9b3f meadow #76a653',
    'apple #8bb64a pear #bcc663 pistachio #b5cf92 avocado #6c7a3a lichen #a7ae84 eucalyptus #8fae9d',
    'thyme #7d8b66 basil #4c7a3c parsley #3f7336 clover #4f8a4a cactus #5d8560 fennel #b9c48f',
    'artichoke #8c9a78 hedge #47663c willow #9fae7c nettle #5a7b4f bracken #8a6a34 celadon #b2d3bd',
    'spearmint #8fd0ae gooseberry #b3bd62 glass #b4d5d0 verdigris #57a08f juniper #4b6f6a lovat #6c7560',
    // Browns, greys and black
    'cocoa #6a4632 coffee #55402f mocha #7d624f espresso #3b2a22 latte #c3a589 walnut #5e4432',
    'hazel #8f6b45 hazelnut #a17c57 almond #d9c0a0 mushroom #b5a698 mink #8c7668 fawn #cdae85',
    'camel #bd9561 bark #5f4b3c oak #a67f4f driftwood #a99a86 pebble #b4ada2 clay #b3745a peat #4a3a2e',
    'bronze #8c6a3a truffle #5d4d44 nutmeg #8a5f3f umber #63492f mud #6d5a44 dove #bdbcba ash #b3b3ae',
    'fog #c6cacb mist #cfd6d6 smoke #9a9d9f steel #7d8891 pewter #84888a graphite #4a4d50 lead #6c7074',
    'flint #6f7274 granite #7c7d7e shadow #5b5c60 coal #333335 jet #232325 ebony #2c2826 raven #26282c',
    'onyx #29292b soot #3a3a3b',
  ].flatMap((line) =>
    [...line.matchAll(/(\S+) (#\S+)/g)].map(([, word, colour]) => [word!, colour!] as const),
  ),
)

/** Names of two words whose last word says something else. */
const PAIRS: readonly (readonly [RegExp, string])[] = [
  [/\bsea ?foam\b/, SHADES.get('seafoam')!],
  [/\bsea ?glass\b/, '#a9d3c6'],
  [/\bduck ?egg\b/, '#bcd9d6'],
  [/\brobin’?'?s? ?egg\b/, '#8fd0cf'],
  [/\boff ?-?white\b/, '#f3eee0'],
  [/\bcandy ?floss\b/, SHADES.get('candyfloss')!],
  [/\bforget[- ]me[- ]not\b/, SHADES.get('forget')!],
  [/\bair ?force\b/, SHADES.get('airforce')!],
  [/\bolive ?drab\b/, '#6b6a35'],
  [/\bbottle ?green\b/, SHADES.get('bottle')!],
  [/\b(forest|pine) ?green\b/, SHADES.get('forest')!],
  [/\broyal ?blue\b/, SHADES.get('royal')!],
  [/\bcobalt ?blue\b/, SHADES.get('cobalt')!],
  [/\bduck ?blue\b/, SHADES.get('duck')!],
  [/\bapple ?green\b/, SHADES.get('apple')!],
  [/\bmidnight ?blue\b/, SHADES.get('midnight')!],
  [/\bcherry ?red\b/, SHADES.get('cherry')!],
  [/\bburnt ?orange\b/, '#b95a24'],
  [/\bhot ?pink\b/, '#e0509a'],
  [/\bash ?grey\b|\bash ?gray\b/, SHADES.get('ash')!],
]

/** The colour for a screen that the name of a yarn says ("Sea foam", "Oatmeal", "Dark fern"); null where no word of it says one. */
export function shadeNamed(name: string): string | null {
  const words = name.toLowerCase()
  const pair = PAIRS.find(([sign]) => sign.test(words))
  if (pair) return shaded(words, pair[1])
  const known = colourNamed(name)
  if (known !== null) return known
  const last = (words.match(/\p{L}+/gu) ?? []).findLast((word) => SHADES.has(word))
  return last === undefined ? null : shaded(words, SHADES.get(last)!)
}
