import type { Summary } from '../../server/protocol/summary.js';

/** What the panel posts to its page whenever the results may have changed. */
export interface PreviewMessage {
  /** Name of the house's file, without its folder. */
  readonly file: string;
  /** Absent while the server has no results to give. */
  readonly summary: Summary | undefined;
}
