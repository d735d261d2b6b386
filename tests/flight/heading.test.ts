import { expect, test } from 'vitest';
import { buildFlight } from '../../src/flight/buildFlight.ts';
import { ascentSpan } from '../../src/ledger/ascentEnd.ts';
import { readLog } from '../../src/log/readLog.ts';
import { readMission } from '../../src/mission/readCard.ts';
import { Ascent } from '../../src/refly/ascent.ts';
import { headingTable, held } from '../../src/refly/controls.ts';
import { flownControls } from '../../src/refly/flownControls.ts';
import { flownTiming, timedSteps } from '../../src/refly/flownTiming.ts';
import { place } from '../../src/refly/motion.ts';
import { rocketOf } from '../../src/refly/rocketOf.ts';
import { simulatedLog } from '../../src/refly/simulatedLog.ts';
import { frameLedger } from '../../src/review/ledgerFigures.ts';
import { cutLog, readCardText } from '../referenceFlights.ts';

const degree = Math.PI / 180;

/** The nominal ascent of Earth flown from another site, its thrust along the great circle or by compass; six channels and the truth. */
async function flown(
  latitude_deg: number,
  azimuth_deg: number,
  thrust: 'along the great circle' | 'by compass',
) {
  const card = JSON.parse(readCardText('earth-nominal'));
  Object.assign(card.site, { latitude_deg, launchAzimuth_deg: azimuth_deg });
  const mission = readMission({ card: { name: 'card', text: JSON.stringify(card) } });
  const text = new TextEncoder().encode(cutLog('earth-nominal'));
  const model = buildFlight(await readLog(text, { name: 'model' }), mission);
  const circle = [model.track, model.otherTrack!].find((track) => track.reading === 'great-circle')!.course;
  const rocket = rocketOf(mission.vehicle!).rocket!;
  const { log, result } = simulatedLog(
    new Ascent(mission.world, rocket, { relativeTolerance: 1e-10 }),
    {
      start: {
        kind: 'pad',
        latitude_rad: latitude_deg * degree,
        longitude_rad: 0,
        altitude_m: 0,
        course_rad: azimuth_deg * degree,
        holdDown_s: 0,
      },
      controls: {
        ...flownControls(model, rocket.stages)!,
        heading:
          thrust === 'along the great circle'
            ? headingTable([...model.time], [...circle])
            : held(azimuth_deg * degree),
      },
      steps: timedSteps(flownTiming(model), 0),
    },
    'flown',
  );
  const { altitude, speed, mass, throttle, pitch } = log.channels;
  const flight = buildFlight(
    {
      ...log,
      channels: { altitude: altitude!, speed: speed!, mass: mass!, throttle: throttle!, pitch: pitch! },
    },
    mission,
  );
  const { entries } = frameLedger(flight, ascentSpan(flight), 'ground');
  return { flight, entries, steering_m_s: result.state[place.steering]! };
}

test.each([
  [28.5, 90],
  [28.5, 45],
  [50, 40],
  [62.9, 20],
])('from %s° along %s°: the reading whose equation of motion closes', async (latitude, azimuth) => {
  const compass = await flown(latitude, azimuth, 'by compass');
  expect(compass.flight.track.reading).toBe('held-azimuth');
  expect(Math.abs(compass.entries.unexplained.value!)).toBeLessThan(0.01);
  const { flight, entries, steering_m_s } = await flown(latitude, azimuth, 'along the great circle');
  expect(flight.track.reading).toBe('great-circle');
  expect(flight.otherTrack?.reading).toBe('held-azimuth');
  // A right card stays: with thrust by compass it would be off by 9 to 50 m/s, and an engine fitted to that.
  expect(flight.identified?.reason).toBe('card-holds');
  // The path leaves the circle by what the turning ground does to it. Measured: 0.3 to 2.0 m/s.
  expect(Math.abs(entries.unexplained.value!)).toBeLessThan(2.5);
  expect(Math.abs(entries.steering.value! - steering_m_s)).toBeLessThan(2.5);
});
