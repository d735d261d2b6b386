import { wrapText } from '../exchange/wrapText.ts';

const width = 80;
/** Where the words about an option begin. */
const column = 24;

/** An option of a command, as parsed and as told in its help. */
export interface Option {
  readonly name: string;
  /** Word for its value in the help; absent for a switch. */
  readonly value?: string;
  /** May be given several times. */
  readonly many?: boolean;
  readonly about: string;
}

export interface Command {
  readonly name: string;
  /** What comes after the command's name. */
  readonly usage: string;
  readonly about: string;
  readonly options: readonly Option[];
  /** Further lines of the help. */
  readonly notes: readonly string[];
}

export const commands: readonly Command[] = [
  {
    name: 'review',
    usage: 'LOG|FOLDER… [options]',
    about: 'Says whether the flight made its orbit, where its delta-v went and what was left.',
    options: [
      { name: 'mission', value: 'CARD', about: 'mission card: world, site, target, vehicle' },
      {
        name: 'plan',
        value: 'PLAN',
        about: 'what was planned: pitch and throttle in a table, a full profile, or another flight',
      },
      { name: 'world', value: 'W', about: 'earth, moon or mars, over the card’s world' },
      { name: 'target', value: 'ALT', about: 'circular target orbit, such as 90km, over the card’s' },
      {
        name: 'map',
        value: 'CHANNEL=COLUMN[:UNIT]',
        many: true,
        about: 'read a channel from this column; a column with a colon in its name goes in "…"',
      },
      { name: 'part', value: 'N', about: 'the N-th flight of a file that holds several' },
      {
        name: 'causes',
        about: 'fly it again, for some seconds, to find what cost most (always done with a plan)',
      },
      { name: 'json', about: 'the review as a JSON document; an array where there are several logs' },
      {
        name: 'jsonl',
        about: 'a line of JSON for each log as it is done: {"log", "review"} or {"log", "error"}',
      },
      {
        name: 'resume',
        value: 'FILE',
        about: 'write those lines at the end of FILE, for the logs whose line is not there yet',
      },
      { name: 'report', value: 'FILE.html', about: 'write the report, one HTML file that needs no other' },
      { name: 'channels', value: 'FILE.csv', about: 'write the sampled channels as CSV' },
      {
        name: 'parquet',
        value: 'FILE',
        about: 'write the flight as Apache Parquet: the sampled channels, units and review in its metadata',
      },
      { name: 'oem', value: 'FILE', about: 'write the flown path as a CCSDS Orbit Ephemeris Message' },
      { name: 'opm', value: 'FILE', about: 'write the orbit at cutoff as a CCSDS Orbit Parameter Message' },
    ],
    notes: [
      'A card NAME.mission.json or a plan NAME.plan.csv beside NAME.csv is taken without being named. - reads standard input.',
      'A folder stands for the logs in it. With --json or --jsonl many logs are reviewed on all cores.',
      'Exit code: 0 reviewed, 2 usage, 3 input that could not be read, 4 nothing to derive; the worst of several.',
    ],
  },
  {
    name: 'compare',
    usage: 'LOG|FOLDER… [options]',
    about: 'Sets attempts side by side: verdicts, margins, losses, habits, progress, where the ways part.',
    options: [
      { name: 'mission', value: 'CARD', about: 'mission card of all the logs' },
      {
        name: 'by',
        value: 'WHAT',
        about: 'group by pilot (as it is), vehicle, mission, world, payload or verdict',
      },
      {
        name: 'reference',
        value: 'NAME',
        about:
          'hold against this log, against the plan (“plan”) or the best ascent of the same rocket (“best”); else the greatest margin',
      },
      { name: 'plan', value: 'PLAN', about: 'what was planned, for all the logs' },
      { name: 'world', value: 'W', about: 'earth, moon or mars, over the card’s world' },
      { name: 'target', value: 'ALT', about: 'circular target orbit, such as 90km, over the card’s' },
      {
        name: 'map',
        value: 'CHANNEL=COLUMN[:UNIT]',
        many: true,
        about: 'read a channel from this column in every log',
      },
      { name: 'json', about: 'the comparison as a JSON document' },
      { name: 'report', value: 'FILE.html', about: 'write the report, one HTML file that needs no other' },
    ],
    notes: [
      'A card NAME.mission.json beside NAME.csv is taken without being named; pilot and attempt stand in it.',
      'Exit code: 0 compared, 2 usage, 3 input that could not be read, 4 nothing to derive; the worst of several.',
    ],
  },
  {
    name: 'refly',
    usage: 'LOG [options]',
    about: 'Flies one flight again: by its own controls, against a plan, and as well as its rocket can.',
    options: [
      { name: 'mission', value: 'CARD', about: 'mission card: world, site, target, vehicle, limits' },
      { name: 'plan', value: 'PLAN', about: 'what was planned; the difference is shared out to its causes' },
      { name: 'best', about: 'search the best ascent of the same rocket within the card’s limits' },
      { name: 'out', value: 'PLAN', about: 'write the best ascent as a plan (name it NAME.plan.csv)' },
      { name: 'world', value: 'W', about: 'earth, moon or mars, over the card’s world' },
      { name: 'target', value: 'ALT', about: 'circular target orbit, such as 90km, over the card’s' },
      { name: 'map', value: 'CHANNEL=COLUMN[:UNIT]', many: true, about: 'read a channel from this column' },
      { name: 'part', value: 'N', about: 'the N-th flight of a file that holds several' },
      { name: 'json', about: 'the result as a JSON document' },
    ],
    notes: [
      'A card NAME.mission.json or a plan NAME.plan.csv beside NAME.csv is taken without being named.',
      'Exit code: 0 flown, 2 usage, 3 input that could not be read, 4 nothing could be flown.',
    ],
  },
  {
    name: 'check',
    usage: 'CARD|PLAN|LOG',
    about: 'Says what is understood of a file and what is missing.',
    options: [],
    notes: ['- reads standard input.', 'Exit code: 0 understood, 2 usage, 3 input that could not be read.'],
  },
  {
    name: 'open',
    usage: '[LOG…] [options]',
    about: 'Serves the page, and these logs, on 127.0.0.1 to this machine only. Ctrl-C ends it.',
    options: [{ name: 'port', value: 'N', about: 'port to serve on (5741; 0 takes any free one)' }],
    notes: [
      'The port stays the same because the browser keeps the logbook by address.',
      'Exit code: 0 ended, 2 usage or a port that is taken, 3 input that could not be read.',
    ],
  },
];

/** Help of one command, or of the whole when none is given. */
export function helpText(command: Command | null, version: string): string {
  return `${(command === null ? overview(version) : detail(command)).join('\n')}\n`;
}

function overview(version: string): string[] {
  return [
    `lossbook ${version}: keeps the books of a flown ascent’s delta-v.`,
    '',
    ...commands.flatMap((c) => [
      `  lossbook ${c.name} ${c.usage}`,
      ...wrapText(c.about, width - 6).map((line) => `      ${line}`),
    ]),
    '',
    '  lossbook COMMAND --help   options of a command',
    '  lossbook --version',
    '',
    'For the review of simulated, educational and amateur flights after the fact;',
    'not for go/no-go decisions, range safety or flight termination.',
  ];
}

/** An option and the first line about it, under each other where the option is too long. */
function headed(left: string, line: string): string {
  return left.length > column - 2 ? `${left}\n${' '.repeat(column)}${line}` : left.padEnd(column) + line;
}

function detail(command: Command): string[] {
  const named = [...command.options, { name: 'help', about: 'this text' } as Option].map((option) => ({
    left: `  --${option.name}${option.value === undefined ? '' : ` ${option.value}`}`,
    right: option.about + (option.many ? ' (repeatable)' : ''),
  }));
  return [
    `lossbook ${command.name} ${command.usage}`,
    '',
    ...wrapText(command.about, width),
    '',
    ...named.flatMap(({ left, right }) =>
      wrapText(right, width - column).map((line, i) =>
        i === 0 ? headed(left, line) : ' '.repeat(column) + line,
      ),
    ),
    '',
    ...command.notes.flatMap((note) => wrapText(note, width)),
  ];
}
