/** What a command is, and how it ends. */
import type { ParseArgsConfig } from 'node:util';

/** How the program ends: scripts read these. */
export const exit = {
  done: 0,
  /** The site or the plan has errors a person must look at. */
  trouble: 1,
  /** The command line was not understood. */
  usage: 2,
  /** A file could not be read or written. */
  file: 3,
} as const;
export type Exit = (typeof exit)[keyof typeof exit];

export interface Invocation {
  readonly files: readonly string[];
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  out(line: string): void;
  err(line: string): void;
}

export interface Command {
  readonly name: string;
  /** Such as `SITE [--bird BIRD]`. */
  readonly usage: string;
  readonly summary: string;
  /** Option name → what it does, with its default; printed by help. */
  readonly help: Readonly<Record<string, string>>;
  readonly options: NonNullable<ParseArgsConfig['options']>;
  /** How many files it takes. */
  readonly files: readonly [least: number, most: number];
  run(invocation: Invocation): Promise<Exit>;
}

/** Thrown for anything the person at the command line can mend; printed as one line, never as a stack. */
export class Refusal extends Error {
  constructor(
    message: string,
    readonly code: Exit = exit.usage,
  ) {
    super(message);
  }
}
