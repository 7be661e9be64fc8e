/** All words of the app in American English. A translation is another file of this shape. */
import { kinds } from './en/kinds.ts';
import { land } from './en/land.ts';
import { library } from './en/library.ts';
import { paper } from './en/paper.ts';
import { pictures } from './en/pictures.ts';
import { posts } from './en/posts.ts';
import { round } from './en/round.ts';
import { season } from './en/season.ts';
import { shell } from './en/shell.ts';

export const en = { shell, kinds, library, land, posts, round, paper, season, pictures };

/** What every language must say. */
export type Words = typeof en;
