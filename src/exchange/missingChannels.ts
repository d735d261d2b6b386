import type { ChannelName, ChannelReading } from '../log/types.ts';

/** What is lost when a log has none of the channels named (METHODS §3). */
const absences: readonly { readonly channels: readonly ChannelName[]; readonly without: string }[] = [
  {
    channels: ['altitude', 'latitude', 'positionX'],
    without: 'altitude: no orbit, no ledger, no delta-v to go',
  },
  {
    channels: ['speed', 'inertialSpeed', 'velocityX'],
    without: 'speed: no orbit, no ledger, no delta-v to go',
  },
  {
    channels: ['mass', 'propellantMass'],
    without: 'mass: neither delta-v nor losses to drag and steering in m/s, and no margin',
  },
  { channels: ['pitch'], without: 'pitch: no steering, and thrust is taken along the path' },
  { channels: ['throttle', 'thrust'], without: 'throttle or thrust: burns are found from the mass alone' },
  {
    channels: ['heading', 'course', 'longitude', 'positionX'],
    without: 'position or heading: no inclination, and the turn of the world beneath the path is reckoned',
  },
];

/** What a log with these channels lacks, each with what that costs. */
export function missingChannels(readings: readonly Pick<ChannelReading, 'channel'>[]): readonly string[] {
  const has = new Set(readings.map((r) => r.channel));
  return absences.filter(({ channels }) => !channels.some((c) => has.has(c))).map((a) => a.without);
}
