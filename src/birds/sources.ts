/** Every source a figure may name: what it is, how far it is to be trusted, and how much of it was really seen. */

import type { Grade } from './guide.ts';

export interface Source {
  readonly key: string;
  readonly title: string;
  readonly publisher: string;
  /** Year as printed; null when the page carries none. */
  readonly year: string | null;
  readonly grade: Grade;
  /** `text` the page or sheet itself, `copy` a reprint or another text quoting it, `abstract` a paper's abstract or summary. */
  readonly seen: 'abstract' | 'text' | 'copy' | 'not seen';
}

type Line = readonly [title: string, publisher: string, year: string | null, grade: Grade, seen: Source['seen']];

const lines = {
  // Readings without a page behind them
  ours: ["This project's own reading", 'Meadowpost', null, 'ours', 'text'],
  'common practice': ['A fact of the trade with no single source', 'many trails', null, 'C', 'not seen'],
  'from memory': ['Remembered, not seen in print: check before relying on it', '–', null, 'M', 'not seen'],
  arithmetic: ['Worked out from figures named beside it', 'Meadowpost', null, 'X', 'text'],
  // Government and extension
  FB609: [
    "Farmers' Bulletin 609 table, in A. F. Siepert, Bird Houses Boys Can Build",
    'US Department of Agriculture',
    '1914',
    'B',
    'copy',
  ],
  HFB: [
    'Homes for Birds, box dimension table (attribution from memory)',
    'US Fish & Wildlife Service, reprint',
    null,
    'B',
    'copy',
  ],
  USFWS: ['For the Birds / Homes for Birds', 'US Fish & Wildlife Service', '2001', 'B', 'copy'],
  FWS2002: [
    'News release of 19 April 2002; sheet "Bird nests – what you need to know"',
    'US Fish & Wildlife Service',
    '2002',
    'B',
    'text',
  ],
  MBTA: ['Migratory Bird Treaty Act, 16 USC 703–711', 'United States Code', '1918', 'B', 'copy'],
  'NRCS-NH': [
    'Job Sheet 645, Bird Boxes',
    'USDA Natural Resources Conservation Service, New Hampshire',
    null,
    'B',
    'text',
  ],
  'NRCS-K': [
    '649 specification sheet, American Kestrel',
    'USDA Natural Resources Conservation Service',
    null,
    'B',
    'text',
  ],
  'NRCS-FL': [
    'Exhibit FL519.2 (opening only)',
    'USDA Natural Resources Conservation Service, Florida',
    '2002',
    'B',
    'text',
  ],
  POLK: ['Wood Duck box brochure', 'Polk Soil & Water Conservation District, Oregon', '2010', 'B', 'text'],
  SWOR: [
    'Nest box guidelines, L. Webb, 22 March 2002',
    'Siskiyou National Forest, US Forest Service',
    '2002',
    'B',
    'text',
  ],
  TWRA: ['Tree Swallow Nest Box', 'Tennessee Wildlife Resources Agency', null, 'B', 'text'],
  KS: ['Bluebird Trails', 'Kansas wildlife department', null, 'B', 'text'],
  'Penn. agency': [
    'Pennsylvania Game Commission advice, in the Times-Tribune, 5 March 2014',
    'Scranton Times-Tribune',
    '2014',
    'B',
    'copy',
  ],
  TXMN: [
    'Recommended Features',
    'Texas Master Naturalist / Texas Parks & Wildlife / Texas A&M Extension',
    null,
    'B',
    'text',
  ],
  'NC Ext.': ['Building Songbird Boxes no. 16', 'NC State Extension', null, 'B', 'text'],
  FEIS: ['Eastern Bluebird species summary', 'US Forest Service, Fire Effects Information System', null, 'B', 'copy'],
  CDC: ['Pages on cleaning up after rodents', 'US Centers for Disease Control and Prevention', '2008', 'B', 'text'],
  // Charities, clubs, shops and hobby pages
  PNW: [
    'Habitat & Nesting Requirements of Selected Local Cavity Nesting Birds',
    'publisher not shown',
    null,
    'C',
    'text',
  ],
  BBNE: ['Possible Occupants', 'Bluebirds Across Nebraska', null, 'C', 'text'],
  NFW: ['Mounting and monitoring', 'nfwhc.org', null, 'C', 'text'],
  TSP: ['Tree swallow box placement', 'treeswallowprojects.com', null, 'C', 'text'],
  AKSB: ['Nest box advice', 'Alaska Songbird Institute', null, 'C', 'text'],
  OEBS: ['Box plans and care', 'Ontario Eastern Bluebird Society', null, 'C', 'text'],
  LWC: ['Trail pages', 'Loudoun Wildlife Conservancy', '2012, 2014', 'C', 'text'],
  Sial: ['Pairing, monitoring and heat pages', 'sialis.org', null, 'C', 'text'],
  SialGrid: ['Box grids', 'sialis.org', null, 'C', 'text'],
  Berner: ["K. Berner's observations on paired boxes", 'sialis.org', null, 'C', 'copy'],
  WHBT: ['Monitoring rules', 'Woolwine House Bluebird Trail, Virginia', null, 'C', 'text'],
  Roll: ['Nest box page', 'Rolland Lab', null, 'C', 'text'],
  ASC: ['Bluebird page', 'Audubon Society of Corvallis', null, 'C', 'text'],
  Fred: ['Bluebird box page', 'Frederick forestry board', '2014', 'C', 'text'],
  GA: ['T. Johnson, nest box spacing table', 'backyardwildlifeconnection.com', '2021', 'C', 'text'],
  BWS: ['Nest box table', 'thebirdwatchersstore.com', null, 'C', 'text'],
  Env: ['Bluebird box spacing', 'enviroliteracy.org', null, 'C', 'text'],
  Ref: ['Bluebird box spacing', 'reference.com', null, 'C', 'text'],
  WBB: ['Bluebird box placement', 'wildbirdbackyard.com', null, 'C', 'text'],
  HTF: ['Bluebird box placement', 'htfbw.com', null, 'C', 'text'],
  GWD: ['Box placement', 'woodducknestboxes.com', null, 'C', 'text'],
  HP: ['Western and Mountain Bluebird boxes', 'highprairie.us', null, 'C', 'text'],
  BestN: ['Hole sizes', 'bestnest.com', null, 'C', 'text'],
  NWW: ['Western Bluebird boxes', 'nativewingsandwildflowers.com', null, 'C', 'text'],
  DCCL: ['Nest box page', 'dccl.org', null, 'C', 'text'],
  RustD: ['Wood Duck plan chapter', 'publisher not shown', null, 'C', 'text'],
  WMP: ['Bluebirds and heat', 'wildlifemanagementpro.com', '2008', 'C', 'text'],
  Warne: ['Ranch trail notes, Alberta', 'warneinthewild.com', null, 'C', 'text'],
  Sawyer: ['Bird Houses, Baths and Feeding Shelters, Table I', 'E. J. Sawyer', null, 'C', 'copy'],
  Scriven: ['Order of facings, quoted by Dhondt & Phillips 2001', 'D. Scriven (book)', null, 'C', 'copy'],
  Yeager: ['Box temperature test', 'hobby test', '2010–11', 'C', 'text'],
  'Shalaway 2002': ['Guards and tree-mounted boxes', 'S. Shalaway', '2002', 'C', 'copy'],
  'Martin Update': [
    'Purple Martin Update 8(2):13 and copies',
    'Purple Martin Conservation Association',
    null,
    'C',
    'copy',
  ],
  'martin pages': ['Several Purple Martin housing pages that agree', 'clubs and shops', null, 'C', 'text'],
  'kestrel pages': ['Several kestrel box sheets (raptor institute and others)', 'clubs', null, 'C', 'text'],
  'duck pages': ['Several Wood Duck box pages that agree', 'clubs and shops', null, 'C', 'text'],
  'trail pages': ['Several bluebird trail pages that agree', 'clubs', null, 'C', 'text'],
  'plan sheet': ['Box plan sheets, publisher not shown', 'hobby', null, 'C', 'text'],
  'Maryland trail': ['Prothonotary Warbler trail of nine boxes', 'a Maryland trail', null, 'C', 'text'],
  'Virginia park': ['Prothonotary Warbler box build', 'a Virginia park', null, 'C', 'text'],
  Langmuir: ['Corrections for descent to the walking rule', 'E. Langmuir, quoted in web texts', null, 'C', 'copy'],
  Aitken: ['Off-track walking pace', 'quoted in web texts', null, 'C', 'copy'],
  RSPB: [
    'Nest box advice as reprinted, and a shop guide',
    'Royal Society for the Protection of Birds',
    null,
    'C',
    'copy',
  ],
  BTO: ['Nest boxes: your essential guide', 'British Trust for Ornithology', null, 'C', 'text'],
  // Papers
  'Ardia 2006': [
    'Ardia, Perez & Clotfelter, J. Field Ornithol. 77:339–344',
    'Journal of Field Ornithology',
    '2006',
    'A',
    'abstract',
  ],
  'Navara & Anderson 2011': ['Southeastern Naturalist 10:713–720', 'Southeastern Naturalist', '2011', 'A', 'abstract'],
  'Butler 2009': [
    'Butler, Whitman & Dufty, Wilson J. Ornithol. 121:778–782',
    'Wilson Journal of Ornithology',
    '2009',
    'A',
    'abstract',
  ],
  'Dhondt & Phillips 2001': ['Birdscope 15(2), volunteer data', 'Cornell Lab of Ornithology', '2001', 'A-', 'text'],
  'Cooper & Chu 2002': ['Birdscope 16(3)', 'Cornell Lab of Ornithology', '2002', 'C', 'copy'],
  'Rendell & Robertson 1994': ['J. Field Ornithol. 65:27–35', 'Journal of Field Ornithology', '1994', 'A', 'abstract'],
  'Rendell & Verbeek 1996': ['Auk 113', 'The Auk', '1996', 'A', 'abstract'],
  'Muldal 1985': ['Muldal, Gibbs & Robertson, Condor 87:356–363', 'The Condor', '1985', 'A', 'abstract'],
  'Willner 1983': [
    'Willner, Gates & Devlin, Am. Midl. Nat. 109:194–201',
    'American Midland Naturalist',
    '1983',
    'A',
    'abstract',
  ],
  'Horn 1996': [
    'Horn, Benninger-Truax & Ulaszewski, Ohio J. Sci. 96(3):57–59',
    'Ohio Journal of Science',
    '1996',
    'A',
    'abstract',
  ],
  'Finch 1989': ['Condor 91:848–859', 'The Condor', '1989', 'A', 'abstract'],
  'Finch 1990': ['Condor 92:674–687', 'The Condor', '1990', 'A', 'abstract'],
  'Holt & Martin 1997': ['Auk 114:443–455', 'The Auk', '1997', 'A', 'abstract'],
  'Wiebe 2016': ['Auk 133', 'The Auk', '2016', 'A', 'abstract'],
  "O'Halloran 1997": ["A Wisconsin club's data on pairs, via K. Berner", 'sialis.org', '1997', 'C', 'copy'],
  'Webb 1987': ['Condor 89:874–898', 'The Condor', '1987', 'A', 'abstract'],
  'Andreasson 2018': [
    'Andreasson, Nord & Nilsson, J. Avian Biol. 49',
    'Journal of Avian Biology',
    '2018',
    'A',
    'abstract',
  ],
  'Ellis 2016': ['Australian Zoologist', 'Australian Zoologist', '2016', 'A', 'abstract'],
  'Ellis & Rhind 2022': [
    'Pacific Conservation Biology 28:444–454',
    'Pacific Conservation Biology',
    '2022',
    'A',
    'abstract',
  ],
  'Griffiths 2017': ['PLoS ONE 12:e0176951', 'PLoS ONE', '2017', 'A', 'abstract'],
  'Bailey & Bonter 2017': [
    "Wildlife Society Bulletin, via the authors' summary",
    'Wildlife Society Bulletin',
    '2017',
    'A',
    'abstract',
  ],
  'Marcus 2023': ['Marcus, Hart & Goodenough, Birds 5:1–23 (review)', 'Birds', '2023', 'A', 'abstract'],
  Zahran: ['Thesis on incubation temperature of Eastern Bluebirds', 'East Carolina University', null, 'A-', 'abstract'],
  // Formulas and standards
  'Derringer & Suich 1980': [
    'Simultaneous optimization of several response variables, J. Quality Technology 12:214–219',
    'Journal of Quality Technology',
    '1980',
    'A',
    'not seen',
  ],
  'Kasten & Young 1989': ['Applied Optics 28:4735–4738', 'Applied Optics', '1989', 'A', 'copy'],
  Haurwitz: ['Clear-sky global radiation, 1945/46', 'Journal of Meteorology', '1945', 'A', 'copy'],
  PVEducation: ['Air mass and direct beam (Meinel form)', 'PVEducation.org', null, 'C', 'text'],
  pvlib: ['pvlib-python source and tests, commit 6382338', 'pvlib-python', null, 'B', 'text'],
  'Naismith 1892': ['Rule for walking time', 'quoted in web texts', '1892', 'C', 'copy'],
  'Tobler 1993': ['Hiking function', 'quoted in web texts', '1993', 'C', 'copy'],
  WMM2025: ['World Magnetic Model 2025', 'NOAA NCEI and British Geological Survey', '2024', 'B', 'text'],
  'Mayfield 1961': [
    'Nesting success calculated from exposure, Wilson Bulletin 73:255–261',
    'Wilson Bulletin',
    '1961',
    'A',
    'not seen',
  ],
  'Mayfield 1975': [
    'Suggestions for calculating nest success, Wilson Bulletin 87:456–466',
    'Wilson Bulletin',
    '1975',
    'A',
    'not seen',
  ],
  'Johnson 1979': [
    'Estimating nest success: the Mayfield method and an alternative, Auk 96:651–661',
    'The Auk',
    '1979',
    'A',
    'not seen',
  ],
  'Klett 1986': [
    'Klett, Duebbert, Faanes & Higgins, Techniques for Studying Nest Success of Ducks in Upland Habitats',
    'US Fish & Wildlife Service, page of the Northern Prairie Wildlife Research Center',
    '1986',
    'B',
    'text',
  ],
  'plover protocol': [
    'A draft protocol for assessing piping plover reproductive success, Appendix C (worked nest-survival example; its last line not seen)',
    'US Geological Survey, Northern Prairie Wildlife Research Center',
    null,
    'B',
    'text',
  ],
  'Manolis 2000': [
    'Uncertain nest fates in songbird studies and variation in Mayfield estimation, Auk 117:615–626',
    'The Auk',
    '2000',
    'A',
    'abstract',
  ],
  'Holm 1979': [
    'A simple sequentially rejective multiple test procedure, Scand. J. Statistics 6:65–70',
    'Scandinavian Journal of Statistics',
    '1979',
    'A',
    'not seen',
  ],
  'Conover 1999': [
    'Practical Nonparametric Statistics, table of exact limits (5 of 25), quoted by influentialpoints.com',
    'Wiley',
    '1999',
    'B',
    'copy',
  ],
  statsmodels: [
    'Test results from the R package binom, in statsmodels (results_proportion.py, commit 1a63aa7)',
    'statsmodels',
    '2013',
    'B',
    'text',
  ],
  'Wilson 1927': [
    'Probable inference, J. Am. Stat. Assoc. 22:209–212',
    'Journal of the American Statistical Association',
    '1927',
    'A',
    'not seen',
  ],
  'Clopper & Pearson 1934': [
    'The use of confidence or fiducial limits, Biometrika 26:404–413',
    'Biometrika',
    '1934',
    'A',
    'not seen',
  ],
  'RFC 5545': ['Internet Calendaring and Scheduling Core Object Specification', 'IETF', '2009', 'B', 'text'],
  'RFC 7946': ['The GeoJSON Format', 'IETF', '2016', 'B', 'text'],
} as const satisfies Record<string, Line>;

export type SourceKey = keyof typeof lines;

/** All sources, in the order of `docs/sources.md`. */
export const sources: readonly Source[] = Object.entries(lines).map(([key, [title, publisher, year, grade, seen]]) => ({
  key,
  title,
  publisher,
  year,
  grade,
  seen,
}));

const byKey: ReadonlyMap<string, Source> = new Map(sources.map((source) => [source.key, source]));

/** The source with this key; throws on an unknown key, which is a programmer's slip. */
export function sourceByKey(key: string): Source {
  const source = byKey.get(key);
  if (!source) throw new Error(`unknown source: ${key}; known: ${[...byKey.keys()].join(', ')}`);
  return source;
}
