/** `npm run meadowpost -- COMMAND …`: the same engine without a screen. */
import { argv, exit as leave, stderr, stdout } from 'node:process';
import { parseArgs } from 'node:util';
import { type Command, type Exit, exit, Refusal } from './command.ts';
import { commands } from './commands/index.ts';

leave(await run(argv.slice(2)));

async function run(words: string[]): Promise<Exit> {
  const [name, ...rest] = words;
  if (name === undefined || name === 'help' || name === '--help') return help(rest[0]);
  const command = commands.find((c) => c.name === name);
  if (!command) return complain(`There is no command "${name}". There are: ${commands.map((c) => c.name).join(', ')}.`);
  if (rest.includes('--help')) return help(name);
  try {
    return await command.run(invocationOf(command, rest));
  } catch (error) {
    if (error instanceof Refusal) return complain(error.message, error.code);
    return complain(`This is a fault in Meadowpost, not in your file: ${(error as Error).message}`, exit.trouble);
  }
}

function invocationOf(command: Command, words: string[]) {
  try {
    const { values, positionals } = parseArgs({ args: words, options: command.options, allowPositionals: true });
    const [least, most] = command.files;
    if (positionals.length < least || positionals.length > most)
      throw new Refusal(`"${command.name}" wants ${command.usage}; it was given ${positionals.length} file(s).`);
    return {
      files: positionals,
      options: values as Record<string, string | boolean | undefined>,
      out: (line: string) => void stdout.write(`${line}\n`),
      err: (line: string) => void stderr.write(`${line}\n`),
    };
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(`${(error as Error).message.split('. ')[0]}. See: meadowpost help ${command.name}`);
  }
}

function complain(sentence: string, code: Exit = exit.usage): Exit {
  stderr.write(`meadowpost: ${sentence}\n`);
  return code;
}

function help(name?: string): Exit {
  const chosen = name ? commands.filter((c) => c.name === name) : commands;
  if (chosen.length === 0) return complain(`There is no command "${name}".`);
  const lines = name ? [] : ['Meadowpost plans where nest boxes stand.', ''];
  for (const c of chosen) {
    lines.push(`  meadowpost ${c.name} ${c.usage}`, `      ${c.summary}`);
    for (const [option, what] of Object.entries(c.help)) lines.push(`      ${option.padEnd(22)} ${what}`);
    lines.push('');
  }
  if (!name)
    lines.push(
      'Ends with 0 done · 1 the site or plan has errors · 2 wrong command line · 3 a file could not be read or written',
    );
  stdout.write(`${lines.join('\n')}\n`);
  return exit.done;
}
