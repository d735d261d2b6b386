import { expect, test } from 'vitest';
import { epochOfTimeZero } from '../../../src/exchange/ccsds/epoch.ts';
import { inertialFrame } from '../../../src/exchange/ccsds/frame.ts';
import { handMadeReview } from '../handMadeReview.ts';

const clock = epochOfTimeZero('2031-05-14T10:20Z');
const at = (world: string, longitude_deg: number | null) => {
  const review = handMadeReview();
  return {
    ...review,
    mission: { ...review.mission, world, site: { ...review.mission.site, longitude_deg } },
  };
};

test('only Earth with date, time of day and longitude is put into TEME', () => {
  expect(inertialFrame(at('Earth', -80.6), clock).name).toBe('TEME');
  expect(inertialFrame(at('Earth', null), clock).name).toBe('INERTIAL_AT_LIFTOFF');
  expect(inertialFrame(at('Earth', -80.6), epochOfTimeZero('2031-05-14')).name).toBe('INERTIAL_AT_LIFTOFF');
  expect(inertialFrame(at('Osselby', 3), clock)).toMatchObject({
    name: 'INERTIAL_AT_LIFTOFF',
    meridian_rad: 0,
  });
});
