export { indexAt, valueAt } from '../review/sampleAt.ts';
