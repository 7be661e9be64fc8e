/** Finds the command in the words, runs it, and turns every refusal into one line. */
import { parseArgs } from 'node:util';
import { type Command, type Exit, exit, type Invocation, Refusal } from './command.ts';
import { type CommandName, commandNames, commands } from './commands/index.ts';

type Say = Pick<Invocation, 'out' | 'err'>;

/** Never throws; the answer is how the program ends. */
export async function run(words: readonly string[], say: Say): Promise<Exit> {
  const [name, ...rest] = words;
  try {
    if (name === undefined || name === 'help' || name === '--help') return await help(rest[0], say);
    const command = await commandNamed(name);
    if (rest.includes('--help')) return await help(name, say);
    return await command.run({ ...argumentsOf(command, rest), ...say });
  } catch (error) {
    const refused = error instanceof Refusal;
    const sentence = refused
      ? error.message
      : `This is a fault in Meadowpost, not in your file: ${(error as Error).message}`;
    say.err(`meadowpost: ${sentence}`);
    return refused ? error.code : exit.trouble;
  }
}

async function commandNamed(name: string): Promise<Command> {
  const known = commandNames.find((n): n is CommandName => n === name);
  if (!known) throw new Refusal(`There is no command "${name}". There are: ${commandNames.join(', ')}.`);
  return commands[known]();
}

function argumentsOf(command: Command, words: string[]): Pick<Invocation, 'files' | 'options'> {
  const parsed = parsedWords(command, words);
  const [least, most] = command.files;
  const count = parsed.positionals.length;
  if (count < least || count > most)
    throw new Refusal(`"${command.name}" wants ${command.usage}; it was given ${count} file${count === 1 ? '' : 's'}.`);
  return { files: parsed.positionals, options: parsed.values as Invocation['options'] };
}

function parsedWords(command: Command, words: string[]) {
  try {
    return parseArgs({ args: words, options: command.options, allowPositionals: true });
  } catch (error) {
    throw new Refusal(`${(error as Error).message.split('. ')[0]}. See: meadowpost help ${command.name}`);
  }
}

async function help(name: string | undefined, { out }: Say): Promise<Exit> {
  const chosen = name ? [await commandNamed(name)] : await Promise.all(commandNames.map((n) => commands[n]()));
  if (!name) out('Meadowpost plans where nest boxes stand.\n');
  for (const command of chosen) {
    out(`  meadowpost ${command.name} ${command.usage}\n      ${command.summary}`);
    for (const [option, what] of Object.entries(command.help)) out(`      ${option.padEnd(22)} ${what}`);
    out('');
  }
  if (!name)
    out(
      'Ends with 0 done · 1 the site or plan has errors · 2 wrong command line · 3 a file could not be read or written',
    );
  return exit.done;
}
