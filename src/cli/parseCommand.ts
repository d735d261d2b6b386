import { parseArgs } from 'node:util';
import { LossbookError } from '../errors.ts';
import { suggestion } from '../suggest.ts';
import { type Command, commands, type Option } from './commands.ts';

/** What the user asked for. */
export interface Asked {
  /** null = the whole program (`lossbook --help`). */
  readonly command: Command | null;
  readonly help: boolean;
  readonly version: boolean;
  readonly files: readonly string[];
  /** Value of an option that may be given once. */
  readonly value: (name: string) => string | undefined;
  /** Values of an option that may be given several times. */
  readonly values: (name: string) => readonly string[];
  readonly on: (name: string) => boolean;
}

/**
 * Reads the arguments after the program's name.
 * @throws LossbookError `usage`, with a suggestion where a word is close to a known one.
 */
export function parseCommand(args: readonly string[]): Asked {
  const [first, ...rest] = args;
  const command = commands.find((c) => c.name === first) ?? null;
  if (command === null && first !== undefined && !first.startsWith('-')) throw unknownCommand(first);
  const known: Option[] = [
    ...(command?.options ?? []),
    { name: 'help', about: '' },
    ...(command === null ? [{ name: 'version', about: '' }] : []),
  ];
  const { tokens } = parseArgs({
    args: command === null ? [...args] : rest,
    options: Object.fromEntries(
      known.map((o) => [o.name, { type: o.value === undefined ? 'boolean' : 'string' } as const]),
    ),
    strict: false,
    tokens: true,
  });
  const usage = (reason: string) => new LossbookError('usage', { reason, command: command?.name ?? '' });
  const given = new Map<string, string[]>();
  const files: string[] = [];
  for (const token of tokens) {
    if (token.kind === 'positional') files.push(token.value);
    if (token.kind !== 'option') continue;
    const option = known.find((o) => token.rawName === `--${o.name}`);
    if (option === undefined) throw usage(unknownOption(token.rawName, known));
    given.set(option.name, [...(given.get(option.name) ?? []), optionValue(option, token, usage)]);
    if (!option.many && (given.get(option.name)?.length ?? 0) > 1)
      throw usage(`--${option.name} is given twice`);
  }
  if (command === null && files[0] !== undefined) throw unknownCommand(files[0]);
  return {
    command,
    help: given.has('help'),
    version: given.has('version'),
    files,
    value: (name) => given.get(name)?.[0],
    values: (name) => given.get(name) ?? [],
    on: (name) => given.has(name),
  };
}

function optionValue(
  option: Option,
  token: { readonly value?: string | undefined; readonly inlineValue?: boolean | undefined },
  usage: (reason: string) => LossbookError,
): string {
  if (option.value === undefined) {
    if (token.value !== undefined) throw usage(`--${option.name} takes no value`);
    return '';
  }
  // Without "=", the next word was taken for the value even where it is an option itself.
  const swallowed = token.inlineValue !== true && /^-./u.test(token.value ?? '');
  if (token.value === undefined || token.value === '' || swallowed) {
    throw usage(`--${option.name} needs a value: --${option.name} ${option.value}`);
  }
  return token.value;
}

function unknownOption(rawName: string, known: readonly Option[]): string {
  const name = rawName.replace(/^-+/u, '');
  const names = known.map((o) => `--${o.name}`);
  return `there is no option ${rawName}${suggestion(`--${name}`, names)}`;
}

function unknownCommand(word: string): LossbookError {
  const reason = /[./\\]/u.test(word)
    ? `“${word}” is not a command; to review it: lossbook review ${word}`
    : `there is no command “${word}”${suggestion(
        word,
        commands.map((c) => c.name),
      )}`;
  return new LossbookError('usage', { reason, command: '' });
}
