import { LossbookError } from '../errors.ts';
import type { ChannelName, Log } from '../log/types.ts';
import type { Mission, Stage } from '../mission/types.ts';
import { radiusAt_m } from '../world/radius.ts';
import { accelerationBreaks } from './accelerationBreaks.ts';
import { airAlongPath } from './air.ts';
import { type Axis, buildAxis } from './axis.ts';
import { blockMeans } from './blockMeans.ts';
import { findBurns, type RawBurn } from './burnEdges.ts';
import { settleCoasts } from './coastState.ts';
import { withGroundSpeed } from './groundSpeed.ts';
import { headingReading } from './headingReading.ts';
import { hiddenEdges } from './hiddenEdges.ts';
import { massFromCard } from './identify/massFromCard.ts';
import { vehicleFromLog } from './identify/vehicleFromLog.ts';
import { deriveKinematics, type Kinematics } from './kinematics.ts';
import { addGroundsFall, latitudeAlong } from './latitudeAlong.ts';
import { findLiftOff } from './liftOff.ts';
import { findMassDrops } from './massDrops.ts';
import { layMass } from './massLine.ts';
import { whiteNoise } from './noise.ts';
import { controlOnAxis, filled } from './onAxis.ts';
import { pathAngle } from './pathAngle.ts';
import { pathBurns } from './pathBurns.ts';
import { printedStep } from './printedStep.ts';
import { fuseRise } from './riseAngle.ts';
import { thrustSegments } from './segments.ts';
import { fuseKinematics } from './smooth/fusedKinematics.ts';
import { splitAtStaging } from './splitBurns.ts';
import { stageAlong } from './stageAlong.ts';
import { nameStages } from './stages.ts';
import { thrustGaps } from './thrustGaps.ts';
import { trackChooser } from './tracks.ts';
import type { Burn, Derivation, Flight, MassDrop } from './types.ts';

/**
 * Understands a log as a flight of the card's mission.
 * @throws LossbookError `no-flight` when nothing in the log moves.
 */
export function buildFlight(logged: Log, mission: Mission): Flight {
  const { log: given, note: averaged } = blockMeans(logged);
  const overGround = withGroundSpeed(given, mission);
  const log = overGround?.log ?? given;
  const rawSpeed = filled(log.time, log.channels.speed ?? speedFromParts(log))!;
  const rawAltitude = filled(log.time, log.channels.altitude)!;
  const still = Math.max(log.resolution.speed ?? 0, whiteNoise(log.time, rawSpeed));
  const liftOff = findLiftOff(log.time, rawSpeed, rawAltitude, still, firstThrust_s(log));
  if (liftOff === null) throw new LossbookError('no-flight', {}, { file: log.source.name });
  const t = log.time.map((x) => x - liftOff.time_s);

  const throttle = filled(t, log.channels.throttle);
  const loggedMass = filled(t, log.channels.mass);
  const thrust = filled(t, log.channels.thrust);
  const mass =
    loggedMass ??
    (liftOff.startsInFlight ? null : massFromCard(t, rawAltitude, { throttle, thrust }, mission));
  const massStep = Math.max(log.resolution.mass ?? 0, printedMassStep(logged));
  const massRounding = massStep / Math.sqrt(12);
  const massNoise = mass === null ? 0 : whiteNoise(t, mass);
  // Without a logged mass an edge lies anywhere in its gap: as open as what burns from row to row.
  const unseenFall = loggedMass === null && mass !== null ? usualFall(mass) : 0;
  // Rounding looks like noise of up to some two and a half times its own error.
  const massSigma = massNoise > 2.6 * massRounding ? massNoise : massRounding;
  const drops = mass === null ? [] : findMassDrops(t, mass, massSigma, massStep);
  const evidence = { t, throttle, thrust, mass, drops, massSigma_kg: massSigma, massStep_kg: massStep };
  const told = throttle !== null || thrust !== null || mass !== null;
  const seen = told ? null : pathBurns(log, t, mission);
  let raw: RawBurn[] = seen === null ? findBurns(evidence) : [...seen.burns];
  raw = splitAtStaging(t, mass, raw, drops, mission.vehicle);
  const staging = nameStages(t, mass, raw, drops, mission.vehicle, stageNumbers(log, raw));
  raw = hiddenEdges(t, mass, raw, drops, mission.vehicle, staging.stageOfBurn);

  const axis = buildAxis(t, raw, drops);
  const pitch = controlOnAxis(axis, t, filled(t, log.channels.pitch), raw);
  const throttleOnAxis = controlOnAxis(axis, t, throttle, raw);
  const loggedThrust = controlOnAxis(axis, t, thrust, raw);
  const line = mass === null ? null : layMass(axis, t, mass, throttle, raw, drops, massSigma);
  const breaks = accelerationBreaks(raw, t);
  const alone = deriveKinematics(log, t, axis.time, breaks);
  // A speed over the ground that was made with the altitude's rate can bear no witness to it.
  const path =
    overGround === null
      ? fuseKinematics({ log, t, axis, breaks, mission, startsInFlight: liftOff.startsInFlight }, alone)
      : alone;
  if (axis.liftOff >= 0 && !liftOff.startsInFlight) restAtLiftOff(axis, path, rawAltitude);

  const place = latitudeAlong(log, t, axis, mission, path);
  const cutoffs = settleCoasts(log, t, axis, mission, path, raw, place.latitude);
  addGroundsFall(log, axis, mission, path, place);

  const cardBurns: Burn[] = raw.map((burn, k) => {
    const stageIndex = staging.stageOfBurn[k]!;
    const stage: Stage | null = mission.vehicle?.stages[stageIndex] ?? null;
    const boosterDrops = drops.flatMap((_, d) =>
      staging.drops[d]!.kind === 'booster-separation' ? [axis.time[axis.dropIndex[d]!]!] : [],
    );
    return {
      start_s: burn.start_s,
      end_s: burn.end_s,
      startIndex: axis.burnStart[k]!,
      endIndex: axis.burnEnd[k]!,
      stage: stageIndex,
      startMass_kg: line === null ? null : line.mass[axis.burnStart[k]!]!,
      endMass_kg: line === null ? null : line.mass[axis.burnEnd[k]!]!,
      startsBeforeLog: burn.startsBeforeLog && liftOff.startsInFlight,
      endsAfterLog: burn.endsAfterLog,
      segments: thrustSegments(stage, burn.start_s, burn.end_s, meanThrottle(throttle, burn), boosterDrops),
    };
  });
  const massDrops: MassDrop[] = drops.map((_, k) => ({
    time_s: axis.time[axis.dropIndex[k]!]!,
    index: axis.dropIndex[k]!,
    mass_kg: line!.dropped_kg[k]!,
    kind: staging.drops[k]!.kind,
    subject: staging.drops[k]!.subject,
  }));

  const air = airAlongPath(mission.world, path.altitude, path.speed);
  const pitchSigma = pitch === null ? 0 : whiteNoise(t, filled(t, log.channels.pitch)!);
  const angle = pathAngle(path, pitch);
  const radius = path.altitude.map((h, i) => radiusAt_m(mission.world, h, place.latitude[i]!));
  let riseSigma: Float64Array = new Float64Array(axis.time.length).fill(Number.NaN);
  const firstBurn = raw.findIndex((b) => b.end_s > 0);
  if (axis.liftOff >= 0 && !liftOff.startsInFlight && pitch !== null && firstBurn !== -1) {
    riseSigma = fuseRise(
      {
        world: mission.world,
        latitude_rad: mission.site.latitude_rad,
        azimuth_rad: mission.site.launchAzimuth_rad,
        time: axis.time,
        radius,
        speed: path.speed,
        verticalSpeed: Float64Array.from(path.verticalSpeed),
        verticalSigma_m_s: path.verticalSpeedSigma_m_s,
        speedSigma_m_s: path.speedSigma_m_s,
        pitchSigma_rad: pitchSigma,
        pitch,
        from: axis.liftOff,
        to: axis.burnEnd[firstBurn]!,
      },
      angle,
      path.verticalSpeed,
    );
  }
  const horizontalSpeed = path.speed.map((v, i) => v * Math.cos(angle[i]!));
  const loggedDrag = controlOnAxis(axis, t, filled(t, log.channels.drag), []);
  const stage = stageAlong(axis.time.length, cardBurns, massDrops);
  const chooseTracks = trackChooser({
    log,
    t,
    axis,
    mission,
    path,
    radius,
    horizontalSpeed,
    pitch,
    burns: raw,
  });
  const gapsOf = (lit: readonly Burn[]) =>
    thrustGaps(axis.time, line?.mass ?? null, air.pressure, loggedThrust, lit);
  const reading = headingReading(
    { ...path, ...air, mission, time: axis.time, radius, flightPathAngle: angle, pitch },
    gapsOf(cardBurns),
    chooseTracks,
  );
  const book = (lit: readonly Burn[]) => {
    const gaps = gapsOf(lit);
    const tracks = chooseTracks(gaps, reading);
    return { gaps, tracks, track: tracks.track };
  };
  const identified =
    // A mass that the card made cannot tell the card anything.
    line === null || pitch === null || loggedMass === null
      ? null
      : vehicleFromLog({
          log,
          mission,
          axis,
          mass: line.mass,
          pitch,
          radius,
          speed: path.speed,
          verticalSpeed: path.verticalSpeed,
          flightPathAngle: angle,
          ...air,
          stage,
          loggedDrag,
          loggedThrust,
          speedSigma_m_s: path.speedSigma_m_s,
          pitchSigma_rad: pitchSigma,
          massSigma_kg: massSigma,
          riseAngleSigma: riseSigma,
          liftOffIndex: Math.max(0, axis.liftOff),
          startsInFlight: liftOff.startsInFlight,
          burns: cardBurns,
          book,
        });
  const adopted = identified?.adopted === true;
  const burns = adopted ? identified.burns : cardBurns;
  const { gaps, tracks } = book(burns);
  const ownSpeed = path.derivations.filter((d) => overGround === null || d.quantity !== 'speed');
  const speedFrom = overGround === null ? [] : [overGround.derivation];
  const derivations: Derivation[] = [...ownSpeed, ...speedFrom, ...tracks.derivations];
  return {
    log: given,
    mission,
    liftOffLogTime_s: liftOff.time_s,
    startsInFlight: liftOff.startsInFlight,
    time: axis.time,
    isRow: Uint8Array.from(axis.row, (r) => (r >= 0 ? 1 : 0)),
    altitude: path.altitude,
    radius,
    speed: path.speed,
    verticalSpeed: path.verticalSpeed,
    horizontalSpeed,
    flightPathAngle: angle,
    track: tracks.track,
    otherTrack: tracks.other,
    mass: line?.mass ?? null,
    throttle: throttleOnAxis,
    pitch,
    loggedThrust,
    loggedDrag,
    ...air,
    gaps,
    burns,
    drops: massDrops,
    seenThrottleSteps: seen?.throttleSteps ?? [],
    stage,
    identified,
    vehicle: adopted ? identified.vehicle : mission.vehicle,
    liftOffIndex: Math.max(0, axis.liftOff),
    noise: {
      altitude_m: path.altitudeSigma_m,
      speed_m_s: path.speedSigma_m_s,
      verticalSpeed_m_s: path.verticalSpeedSigma_m_s,
      verticalSample_m_s: log.channels.verticalSpeed === undefined ? 0 : alone.verticalSpeedSigma_m_s,
      pitch_rad: pitchSigma,
      mass_kg: loggedMass === null ? unseenFall / Math.sqrt(12) : massSigma,
      massStep_kg: loggedMass === null ? unseenFall : massStep,
    },
    cutoffs,
    riseAngleSigma: riseSigma,
    liftOffSigma_s: liftOff.sigma_s,
    derivations,
    notes: [...(averaged === null ? [] : [averaged]), ...path.notes],
    channelsUsed: Object.keys(given.channels) as ChannelName[],
  };
}

function speedFromParts(log: Log): Float64Array | undefined {
  const up = log.channels.verticalSpeed;
  const across = log.channels.horizontalSpeed;
  if (up === undefined || across === undefined) return undefined;
  return up.map((v, i) => Math.hypot(v, across[i]!));
}

/** Median fall of the mass from row to row while it falls, kg. */
function usualFall(mass: Float64Array): number {
  const falls: number[] = [];
  for (let i = 1; i < mass.length; i++) if (mass[i]! < mass[i - 1]!) falls.push(mass[i - 1]! - mass[i]!);
  falls.sort((a, b) => a - b);
  return falls[falls.length >> 1] ?? 0;
}

/** Step to which the mass was printed, kg; 0 where there is none. */
function printedMassStep(log: Log): number {
  const mass = log.channels.mass;
  const reading = log.readings.find((r) => r.channel === 'mass');
  return mass === undefined ? 0 : printedStep(mass, reading?.factor ?? 1);
}

/** Log time of the first row with an open throttle or thrust; null where neither is logged. */
function firstThrust_s(log: Log): number | null {
  const row = (log.channels.throttle ?? log.channels.thrust)?.findIndex((x) => x > 0) ?? -1;
  return row === -1 ? null : log.time[row]!;
}

/** The stage channel's number in the middle of each burn, null where it is not logged. */
function stageNumbers(log: Log, burns: readonly RawBurn[]): (number | null)[] {
  const channel = log.channels.stage;
  return burns.map((burn) => {
    const value = channel?.[(burn.first + burn.last) >> 1];
    return value !== undefined && Number.isFinite(value) ? Math.round(value) : null;
  });
}

/** At time zero the vehicle stands on its pad, whatever a smoother would say. */
function restAtLiftOff(axis: Axis, path: Kinematics, rawAltitude: Float64Array): void {
  for (let i = 0; i <= axis.liftOff; i++) {
    const row = axis.row[i]!;
    path.altitude[i] = row >= 0 ? rawAltitude[row]! : (path.altitude[i - 1] ?? rawAltitude[0]!);
    // A log that begins at lift-off may begin in motion; noise is none.
    if (row === 0 && i === axis.liftOff && path.speed[i]! > 4 * path.speedSigma_m_s) continue;
    path.speed[i] = 0;
    path.verticalSpeed[i] = 0;
  }
}

function meanThrottle(throttle: Float64Array | null, burn: RawBurn): number {
  if (throttle === null) return 1;
  let sum = 0;
  for (let i = burn.first; i <= burn.last; i++) sum += throttle[i]!;
  return sum / (burn.last - burn.first + 1);
}
