/** What each bird's nest and eggs look like in a box: data for the key. Counts, holes and regions come from the guides. */

import type { Cup, EggColor, EggPattern, EggSize, Material } from './visit.ts';

export interface KeyRow {
  /** Bird id, or `mouse`. */
  readonly id: string;
  /** Birds that cannot be told apart by nest and eggs share a group. */
  readonly group?: string;
  /** What gives this nest away. */
  readonly signature: readonly Material[];
  /** What may be in it too. */
  readonly also: readonly Material[];
  readonly cups: readonly Cup[];
  readonly colors: readonly EggColor[];
  /** Colors seen now and then. */
  readonly rareColors?: readonly EggColor[];
  readonly patterns: readonly EggPattern[];
  readonly sizes: readonly EggSize[];
  /** What tells it from its doubles. */
  readonly tell: string;
  readonly source: readonly string[];
}

const seen = ['common practice'];
const memory = ['from memory'];
const plainBlue: Pick<KeyRow, 'colors' | 'rareColors' | 'patterns'> = {
  colors: ['blue', 'pale-blue'],
  rareColors: ['white'],
  patterns: ['plain'],
};
const bluebird: Omit<KeyRow, 'id'> = {
  group: 'bluebirds',
  signature: ['grass', 'pine-needles'],
  also: ['straw', 'bark', 'rootlets', 'hair'],
  cups: ['neat-cup'],
  ...plainBlue,
  sizes: ['medium'],
  tell: 'a neat cup of fine grass or needles alone, without feathers; plain blue eggs, now and then white',
  source: seen,
};
const swallow: Omit<KeyRow, 'id'> = {
  group: 'swallows',
  signature: ['feathers'],
  also: ['grass', 'straw', 'pine-needles'],
  cups: ['neat-cup', 'flat'],
  colors: ['white'],
  patterns: ['plain'],
  sizes: ['small', 'medium'],
  tell: 'a grass cup lined with feathers, often white ones; pure white eggs',
  source: seen,
};
const chickadee: Omit<KeyRow, 'id'> = {
  group: 'chickadees',
  signature: ['moss', 'plant-down'],
  also: ['hair'],
  cups: ['neat-cup', 'deep-cup-at-back'],
  colors: ['white'],
  patterns: ['spots', 'fine-speckles'],
  sizes: ['small'],
  tell: 'a thick base of moss with hair and down; small white eggs with reddish-brown spots',
  source: seen,
};
const crested: Omit<KeyRow, 'id'> = {
  group: 'crested flycatchers',
  signature: ['snake-skin', 'leaves'],
  also: ['hair', 'feathers', 'bark', 'litter'],
  cups: ['neat-cup', 'flat', 'deep-cup-at-back'],
  colors: ['cream', 'buff'],
  patterns: ['streaks'],
  sizes: ['medium', 'large'],
  tell: 'leaves, hair and often snake skin; cream eggs streaked with brown and purple',
  source: seen,
};
const houseSparrow: Omit<KeyRow, 'id'> = {
  signature: ['litter'],
  also: ['grass', 'straw', 'feathers', 'leaves', 'shredded-grass'],
  cups: ['dome'],
  colors: ['grey-white', 'white'],
  patterns: ['blotches', 'fine-speckles', 'spots'],
  sizes: ['medium'],
  tell: 'an untidy dome overfilling the box with grass, feathers and litter, entered from the side; grey-white blotched eggs',
  source: seen,
};
const starling: Omit<KeyRow, 'id'> = {
  signature: ['straw'],
  also: ['grass', 'feathers', 'leaves', 'litter', 'twigs'],
  cups: ['flat', 'neat-cup'],
  colors: ['blue-green', 'pale-blue'],
  patterns: ['plain'],
  sizes: ['large'],
  tell: 'coarse bulky grass; plain pale blue-green eggs, larger than a bluebird’s; needs a hole of 1 5/8 in or more',
  source: seen,
};
const tit: Omit<KeyRow, 'id'> = {
  group: 'tits',
  signature: ['moss', 'hair'],
  also: ['grass', 'feathers', 'plant-down'],
  cups: ['neat-cup'],
  colors: ['white'],
  patterns: ['spots', 'fine-speckles'],
  sizes: ['small'],
  tell: 'moss with a hair cup; white eggs with red spots; a 25 mm hole lets in the Blue Tit only',
  source: memory,
};

/** Every nest the key knows. */
export const keyRows: readonly KeyRow[] = [
  { id: 'eastern-bluebird', ...bluebird },
  { id: 'western-bluebird', ...bluebird },
  { id: 'mountain-bluebird', ...bluebird },
  { id: 'tree-swallow', ...swallow },
  { id: 'violet-green-swallow', ...swallow },
  {
    id: 'house-wren',
    signature: ['twigs'],
    also: ['feathers', 'hair', 'rootlets', 'litter'],
    cups: ['deep-cup-at-back', 'no-cup'],
    colors: ['white', 'cream'],
    patterns: ['fine-speckles'],
    sizes: ['small'],
    tell: 'the box nearly filled with twigs, a small deep cup at the back; eggs densely speckled with fine brown. Twigs without a cup or eggs may be a dummy nest',
    source: seen,
  },
  { id: 'black-capped-chickadee', ...chickadee },
  { id: 'carolina-chickadee', ...chickadee },
  {
    id: 'tufted-titmouse',
    signature: ['moss', 'snake-skin'],
    also: ['leaves', 'hair', 'bark'],
    cups: ['neat-cup'],
    colors: ['white', 'cream'],
    patterns: ['fine-speckles'],
    sizes: ['small', 'medium'],
    tell: 'moss and leaves with hair and snake skin; finely speckled eggs larger than a chickadee’s',
    source: memory,
  },
  {
    id: 'white-breasted-nuthatch',
    signature: ['bark'],
    also: ['hair', 'grass', 'rootlets', 'mud'],
    cups: ['flat', 'neat-cup'],
    colors: ['white', 'cream'],
    patterns: ['fine-speckles', 'spots'],
    sizes: ['medium'],
    tell: 'bark flakes and fur; speckled eggs',
    source: memory,
  },
  {
    id: 'prothonotary-warbler',
    signature: ['moss', 'rootlets'],
    also: ['leaves', 'grass', 'bark', 'plant-down'],
    cups: ['neat-cup'],
    colors: ['cream'],
    patterns: ['blotches', 'spots'],
    sizes: ['small'],
    tell: 'moss, leaves and rootlets in a box over water; cream eggs with heavy rust spots',
    source: seen,
  },
  { id: 'great-crested-flycatcher', ...crested },
  { id: 'ash-throated-flycatcher', ...crested },
  {
    id: 'american-kestrel',
    signature: ['shavings'],
    also: [],
    cups: ['no-cup', 'flat'],
    colors: ['buff', 'brown', 'cream'],
    patterns: ['blotches', 'spots', 'fine-speckles'],
    sizes: ['large'],
    tell: 'no nest, buff eggs mottled with brown on the shavings',
    source: memory,
  },
  {
    id: 'eastern-screech-owl',
    signature: ['shavings'],
    also: ['feathers'],
    cups: ['no-cup', 'flat'],
    colors: ['white'],
    patterns: ['plain'],
    sizes: ['large'],
    tell: 'no nest, round white eggs on the shavings',
    source: memory,
  },
  {
    id: 'wood-duck',
    signature: ['own-down'],
    also: ['shavings', 'feathers'],
    cups: ['no-cup', 'flat'],
    colors: ['white', 'cream'],
    patterns: ['plain'],
    sizes: ['large'],
    tell: 'many large dull white eggs bedded in down on the shavings',
    source: ['POLK', 'duck pages'],
  },
  {
    id: 'purple-martin',
    signature: ['mud', 'leaves'],
    also: ['straw', 'grass', 'twigs'],
    cups: ['flat', 'neat-cup'],
    colors: ['white'],
    patterns: ['plain'],
    sizes: ['medium'],
    tell: 'mud, straw and green leaves in a martin room; pure white eggs',
    source: memory,
  },
  { id: 'house-sparrow', ...houseSparrow },
  { id: 'european-starling', ...starling },
  { id: 'great-tit', ...tit },
  { id: 'blue-tit', ...tit },
  {
    id: 'pied-flycatcher',
    signature: ['leaves', 'bark'],
    also: ['grass', 'rootlets'],
    cups: ['neat-cup'],
    colors: ['pale-blue', 'blue'],
    patterns: ['plain'],
    sizes: ['small', 'medium'],
    tell: 'dry leaves and bark without moss; plain pale blue eggs',
    source: memory,
  },
  {
    id: 'eurasian-tree-sparrow',
    signature: ['straw', 'feathers'],
    also: ['grass', 'litter', 'hair'],
    cups: ['dome', 'neat-cup'],
    colors: ['grey-white', 'brown'],
    patterns: ['blotches', 'fine-speckles', 'spots'],
    sizes: ['small', 'medium'],
    tell: 'straw and feathers; grey-brown eggs with dark marks',
    source: memory,
  },
  { id: 'house-sparrow-europe', ...houseSparrow },
  { id: 'common-starling-europe', ...starling },
  {
    id: 'mouse',
    signature: ['shredded-grass', 'droppings'],
    also: ['grass', 'plant-down', 'hair', 'leaves', 'litter'],
    cups: ['closed-ball'],
    colors: [],
    patterns: [],
    sizes: [],
    tell: 'a ball of shredded grass without a cup, droppings: a mouse. Do not sweep it out dry',
    source: seen,
  },
];
