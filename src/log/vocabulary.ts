import type { ChannelName } from './types.ts';

/**
 * The words that headers use, as one plain word each. Other languages than English are served where a word has
 * one meaning only.
 */
export const plainWords: ReadonlyMap<string, string> = new Map(
  Object.entries({
    time: 'time t sec secs second seconds elapsed clock timestamp countdown met zeit temps tiempo tempo tijd czas tid время 时间 時間 epoch datetime utc tplus',
    altitude:
      'altitude alt h height elevation hoehe höhe hohe altura altitud altitudine quota hoogte wysokosc wysokość высота 高度 h asl msl agl',
    speed:
      'speed spd velocity vel velo geschwindigkeit vitesse velocidad velocita velocità velocidade snelheid predkosc prędkość скорость 速度 v',
    vertical: 'vertical vert up upward upwards down downward climb vertikal verticale verticaal radial',
    horizontal: 'horizontal horiz hor lateral tangential horizontale horizontaal',
    inertial: 'inertial inrt eci orbital orbit orb absolute',
    ground: 'ground gnd surface surf srf relative rel ecef earth',
    groundspeed: 'groundspeed airspeed tas gs sog',
    rate: 'rate roc ror',
    path: 'path flightpath bahn',
    angle: 'angle ang winkel angulo angle',
    flight: 'flight flt',
    heading: 'heading hdg azimuth az azimut yaw psi',
    course: 'course track cog bearing kurs',
    latitude: 'latitude lat breite breitengrad latitud latitudine широта 纬度 緯度',
    longitude:
      'longitude lon long lng laenge länge langengrad längengrad longitud longitudine долгота 经度 経度',
    downrange: 'downrange range dr distance dist entfernung distancia',
    position: 'position pos location coordinate coord r',
    mass: 'mass m weight masse masa massa gewicht масса 质量 質量 wt',
    propellant: 'propellant prop fuel treibstoff carburant combustible propellants ergols',
    remaining: 'remaining left rem onboard aboard',
    throttle: 'throttle thr throttling thrtl thrott power gas schubhebel thrustlevel drossel',
    pitch: 'pitch theta nick nickwinkel elev attitude assiette cabeceo тангаж 俯仰',
    tilt: 'tilt',
    zenith: 'zenith',
    roll: 'roll bank rollwinkel phi крен',
    thrust: 'thrust schub poussee poussée empuje spinta stuwkracht ciag ciąg тяга 推力 f',
    drag: 'drag widerstand trainee traînée arrastre resistenza weerstand сопротивление 阻力 d',
    acceleration:
      'acceleration accel acc beschleunigung aceleracion aceleración accelerazione versnelling ускорение 加速度 a g gforce gload nx',
    load: 'load factor lastvielfaches',
    dynamic: 'dynamic dyn staudruck',
    pressure: 'pressure press druck pression presion presión pressione ciśnienie давление 压力 圧力 baro p',
    q: 'q qbar qdyn dynp dynpress dynq maxq',
    ambient: 'ambient static atmospheric atm atmosphere outside outer air umgebungsdruck luftdruck',
    temperature: 'temperature temp temperatur temperatura température температура 温度 tk',
    mach: 'mach machzahl ma m#',
    attack: 'attack',
    aoa: 'aoa alpha anstellwinkel α',
    gamma: 'gamma fpa γ bahnwinkel bahnneigungswinkel climbangle',
    apoapsis: 'apoapsis apogee apo ap apa apoapse apogaeum apogäum apogée apogeo',
    periapsis: 'periapsis perigee peri pe pea periapse perigaeum perigäum périgée perigeo',
    stage: 'stage stg stufe étage etage etapa stadio ступень 级',
    event:
      'event events phase message msg note notes comment remark remarks ereignis événement evento событие 事件 label marker state mode',
    x: 'x px rx east e',
    y: 'y py ry north n',
    z: 'z pz rz',
    vx: 'vx xdot dx ve',
    vy: 'vy ydot dy vn',
    vz: 'vz zdot dz',
    vup: 'vd vu hdot vs vv vspeed vspd vvel vario varo climbrate rod vvert vr altrate',
    vacross: 'vh vhor hspeed hspd hvel vhoriz vt',
  }).flatMap(([plain, words]) => words.split(' ').map((word) => [word, plain] as const)),
);

/** Phrases by which a channel is called, in plain words; the order of the words does not count. */
export const phrases: Readonly<Record<ChannelName, readonly string[]>> = {
  time: ['time', 'flight time'],
  altitude: ['altitude', 'flight altitude', 'ground altitude'],
  speed: ['speed', 'ground speed', 'groundspeed', 'flight speed', 'path speed'],
  inertialSpeed: ['inertial speed', 'inertial ground speed'],
  verticalSpeed: [
    'vertical speed',
    'vertical rate',
    'altitude rate',
    'vup',
    'vertical vup',
    'vertical ground speed',
    'altitude vup',
  ],
  horizontalSpeed: ['horizontal speed', 'vacross', 'horizontal ground speed', 'downrange speed'],
  flightPathAngle: [
    'flight path angle',
    'path angle',
    'gamma',
    'gamma angle',
    'path pitch',
    'flight path',
    'speed angle',
    'speed pitch',
    'vertical angle',
  ],
  heading: ['heading', 'heading angle', 'thrust heading'],
  course: ['course', 'ground course', 'course angle', 'speed heading', 'path heading', 'flight path heading'],
  latitude: ['latitude', 'latitude position'],
  longitude: ['longitude', 'longitude position'],
  downrange: [
    'downrange',
    'ground downrange',
    'downrange position',
    'horizontal downrange',
    'horizontal position',
  ],
  positionX: ['x', 'position x', 'inertial x', 'inertial position x', 'ground x', 'ground position x'],
  positionY: ['y', 'position y', 'inertial y', 'inertial position y', 'ground y', 'ground position y'],
  positionZ: ['z', 'position z', 'inertial z', 'inertial position z', 'ground z', 'ground position z'],
  velocityX: [
    'vx',
    'speed x',
    'speed vx',
    'inertial speed x',
    'ground speed x',
    'inertial vx',
    'position vx',
  ],
  velocityY: [
    'vy',
    'speed y',
    'speed vy',
    'inertial speed y',
    'ground speed y',
    'inertial vy',
    'position vy',
  ],
  velocityZ: [
    'vz',
    'speed z',
    'speed vz',
    'inertial speed z',
    'ground speed z',
    'inertial vz',
    'position vz',
  ],
  mass: ['mass', 'flight mass'],
  propellantMass: [
    'propellant mass',
    'propellant',
    'propellant remaining',
    'propellant mass remaining',
    'mass remaining',
  ],
  throttle: ['throttle', 'throttle position', 'thrust throttle'],
  pitch: [
    'pitch',
    'pitch angle',
    'thrust pitch',
    'thrust angle',
    'altitude angle',
    'tilt',
    'tilt angle',
    'zenith',
    'zenith angle',
  ],
  roll: ['roll', 'roll angle'],
  thrust: ['thrust'],
  drag: ['drag'],
  acceleration: ['acceleration', 'acceleration load', 'load', 'flight acceleration', 'ambient acceleration'],
  dynamicPressure: ['dynamic pressure', 'q', 'q pressure', 'dynamic q', 'q dynamic pressure'],
  ambientPressure: ['pressure', 'ambient pressure'],
  temperature: ['temperature', 'ambient temperature'],
  mach: ['mach', 'mach speed'],
  angleOfAttack: ['attack angle', 'aoa', 'aoa angle', 'attack'],
  apoapsisAltitude: ['apoapsis', 'apoapsis altitude'],
  periapsisAltitude: ['periapsis', 'periapsis altitude'],
  stage: ['stage'],
  event: ['event', 'flight event', 'stage event'],
};

/** Words that say nothing about which channel it is. */
export const noiseWords: ReadonlySet<string> = new Set(
  (
    'the of above from over to in at and total current actual true measured sensor vehicle rocket craft ship launcher ' +
    'stack data value values val gps imu ins nav tlm telemetry estimate estimated est kf filtered smoothed raw mean avg average ' +
    'sea level ground-level since launch liftoff lift off mission number no num id active number count start geometric geodetic ' +
    'wgs84 gross now instantaneous body axis frame magnitude mag abs norm net component aero aerodynamic atmos engine motor ' +
    'deg degrees per unit units local world planet real free stream freestream 0 1 felt proper sensed nongravitational ' +
    'axial longitudinal percent fraction setting log logged reading input output live new force unix posix gmt stamp wet'
  ).split(' '),
);

/** Words with which a column is about something else than the channel's own value. */
export const blockingWords: ReadonlySet<string> = new Set(
  (
    'error err sigma std stdev stddev deviation variance var uncertainty flag valid status quality limit min minimum max maximum ' +
    'peak delta diff difference change loss losses integral chamber tank nozzle battery cabin cell bus volt voltage current_a amp ' +
    'plan planned target desired reference ref desire goal setpoint empty dry initial payload consumed used burned burnt flow mdot ' +
    'eccentricity inclination period semi major anomaly density area coefficient cd cl isp impulse skin wall bay cpu board gyro ' +
    'signal rssi satellites sats hdop vdop fix crc seq sequence index row wind gust yawrate'
  ).split(' '),
);

/** Words that make a column a poorer witness when a better one is there. */
export const weakeningWords: ReadonlySet<string> = new Set(
  'command commanded cmd demand demanded requested request baro barometric pressure-derived predicted model simulated sim radar backup secondary aux alt2'.split(
    ' ',
  ),
);
