/** Every command, in the order help lists them; loaded when it is asked for, so that a small one starts at once. */
import type { Command } from '../command.ts';

export const commands = {
  check: async (): Promise<Command> => (await import('./check.ts')).check,
  score: async (): Promise<Command> => (await import('./score.ts')).score,
  plan: async (): Promise<Command> => (await import('./plan.ts')).plan,
  print: async (): Promise<Command> => (await import('./print.ts')).print,
  export: async (): Promise<Command> => (await import('./export.ts')).exportPlan,
  import: async (): Promise<Command> => (await import('./import.ts')).importSite,
  due: async (): Promise<Command> => (await import('./due.ts')).due,
  review: async (): Promise<Command> => (await import('./review.ts')).review,
  invent: async (): Promise<Command> => (await import('./invent.ts')).invent,
};

export type CommandName = keyof typeof commands;
export const commandNames = Object.keys(commands) as CommandName[];
