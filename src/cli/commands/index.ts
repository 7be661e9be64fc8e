/** Every command, in the order help lists them. */
import type { Command } from '../command.ts';
import { check } from './check.ts';
import { due } from './due.ts';
import { exportPlan } from './export.ts';
import { importSite } from './import.ts';
import { invent } from './invent.ts';
import { plan } from './plan.ts';
import { print } from './print.ts';
import { review } from './review.ts';
import { score } from './score.ts';

export const commands: readonly Command[] = [check, score, plan, print, exportPlan, importSite, due, review, invent];
