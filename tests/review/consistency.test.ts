import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { consistencyNotes } from '../../src/review/consistency.ts';
import { instruments, noisyLog } from '../noisyFlights.ts';
import { cutLog, readCardText, referenceNames } from '../referenceFlights.ts';

async function notesOn(log: string, card: unknown) {
  const read = await readLog(new TextEncoder().encode(log), { name: 'log' });
  return consistencyNotes(
    buildFlight(read, readMission({ card: { name: 'card', text: JSON.stringify(card) } })),
  );
}

const name = 'osselby-short';
const cardOf = () => JSON.parse(readCardText(name));

/** The log with its pitch column changed, degrees. */
function pitched(change: (pitch_deg: number) => number): string {
  return cutLog(name, undefined, 5)
    .split('\n')
    .map((line, i) => {
      if (i === 0) return line;
      const cells = line.split(',');
      return [...cells.slice(0, 5), change(Number(cells[5]))].join(',');
    })
    .join('\n');
}

test.each(referenceNames)(
  '%s: a true card and a true log disagree in nothing, nor with noise',
  async (flight) => {
    const card = JSON.parse(readCardText(flight));
    expect(await notesOn(cutLog(flight, undefined, 5), card)).toEqual([]);
    expect(await notesOn(noisyLog(flight, instruments, 3), card)).toEqual([]);
  },
);

test('lift-off mass, dry mass at staging, burn time and specific impulse off the card', async () => {
  const card = cardOf();
  card.vehicle.stages[0].dryMass_kg = 4200;
  card.vehicle.stages[0].thrustVacuum_N *= 1.05;
  card.vehicle.stages[1].ispVacuum_s = 341;
  card.vehicle.payload_kg += 100;
  const notes = await notesOn(cutLog(name, undefined, 5), card);
  expect(notes.map((n) => n.code)).toEqual([
    'card-liftoff-mass',
    'card-dry-mass',
    'card-burn-time',
    'card-isp',
  ]);
  expect(notes[0]!.text).toContain('62,700 kg, 0.3 % more');
  expect(notes[1]!.text).toContain('7.1 % more');
  expect(notes[2]!.text).toContain('5.0 % more');
  expect(notes[3]!.text).toContain('335.0 s');
});

test('a pitch channel 2° too high is told by the turn of the path', async () => {
  const notes = await notesOn(
    pitched((p) => p + 2),
    cardOf(),
  );
  const bias = notes.find((n) => n.code === 'pitch-bias');
  // Measured: 1.6° ± 0.5°; the horizontal motion takes part of it up.
  expect(bias?.text).toMatch(/1\.[5-9]° below/);
});
