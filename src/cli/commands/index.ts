/** Every command, in the order help lists them. */
import type { Command } from '../command.ts';
import { check } from './check.ts';

export const commands: readonly Command[] = [check];
