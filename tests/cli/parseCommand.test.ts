import { describe, expect, test } from 'vitest';
import { parseCommand } from '../../src/cli/parseCommand.ts';

/** The message that parsing ends in. */
function refusal(...args: string[]): string {
  try {
    parseCommand(args);
  } catch (error) {
    if (error instanceof Error) return error.message;
  }
  return '';
}

describe('arguments', () => {
  test('options may stand anywhere, with or without an equals sign', () => {
    const asked = parseCommand([
      'review',
      'a.csv',
      '--world=moon',
      '--map',
      'time=t:s',
      '--json',
      'b.csv',
      '--map=mass=m',
      '-',
    ]);
    expect(asked.command?.name).toBe('review');
    expect(asked.files).toEqual(['a.csv', 'b.csv', '-']);
    expect(asked.value('world')).toBe('moon');
    expect(asked.values('map')).toEqual(['time=t:s', 'mass=m']);
    expect([asked.on('json'), asked.on('channels'), asked.help]).toEqual([true, false, false]);
  });
  test('after -- everything is a file', () => {
    expect(parseCommand(['review', '--', '--json']).files).toEqual(['--json']);
  });
  test('help and version', () => {
    expect(parseCommand(['--version']).version).toBe(true);
    expect(parseCommand(['--help'])).toMatchObject({ command: null, help: true });
    expect(parseCommand(['open', '--help'])).toMatchObject({ help: true });
    expect(parseCommand([]).command).toBeNull();
  });
  test('standard input may be the card', () => {
    expect(parseCommand(['review', 'a.csv', '--mission', '-']).value('mission')).toBe('-');
  });

  test.each([
    [['reveiw', 'a.csv'], 'there is no command “reveiw”; did you mean “review”?'],
    [['frobnicate'], 'there is no command “frobnicate”; lossbook --help shows how.'],
    [['a.csv'], '“a.csv” is not a command; to review it: lossbook review a.csv'],
    [['review', 'a.csv', '--jsn'], 'there is no option --jsn; did you mean “--json”?'],
    [['review', 'a.csv', '-x'], 'there is no option -x; lossbook review --help shows how.'],
    [['review', 'a.csv', '--mission'], '--mission needs a value: --mission CARD'],
    [['review', 'a.csv', '--mission', '--json'], '--mission needs a value'],
    [['review', 'a.csv', '--world='], '--world needs a value'],
    [['review', 'a.csv', '--json=yes'], '--json takes no value'],
    [['review', 'a.csv', '--part', '1', '--part', '2'], '--part is given twice'],
    [['check', 'a.csv', '--json'], 'there is no option --json; lossbook check --help shows how.'],
    [['--json'], 'there is no option --json'],
  ] as [string[], string][])('%j is refused', (args, message) => {
    expect(refusal(...args)).toContain(message);
  });
});
