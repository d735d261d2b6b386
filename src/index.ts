/** The engine, for programs: texts and bytes in, a plain document out. It opens no file and no connection. */
export { type ExitCode, LossbookError, type MessageCode, type Where } from './errors.ts';
export type { MessageOptions } from './exchange/ccsds/heading.ts';
export { channelsCsv } from './exchange/channelsCsv.ts';
export { oem } from './exchange/oem.ts';
export { opm } from './exchange/opm.ts';
export { reportHtml } from './exchange/report/reportHtml.ts';
export { reviewJson } from './exchange/reviewJson.ts';
export { reviewText, type TextOptions } from './exchange/reviewText.ts';
export { type ReadOptions, readLog } from './log/readLog.ts';
export type { ChannelName, ChannelReading, ColumnChoice, Log, QualityNote } from './log/types.ts';
export { describeMission, type MissionDescription } from './mission/describeCard.ts';
export { type MissionRequest, readMission } from './mission/readCard.ts';
export type { Mission } from './mission/types.ts';
export { type ReviewRequest, reviewFlight as review } from './review/reviewFlight.ts';
export type * from './review/types.ts';
