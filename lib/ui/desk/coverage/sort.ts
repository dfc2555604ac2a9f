import type { TopicCoverage } from '#lib/syllabus/coverage.ts';

/** The columns of the coverage, by which it can be sorted. */
export type Column = 'topic' | 'share' | 'secured' | 'stake' | 'evidence' | 'next';

export interface Order {
  column: Column;
  isDown: boolean;
}

/** Most first, but topics in reading order. */
export const firstOrder = (column: Column): Order => ({ column, isDown: column !== 'topic' });

/**
 * Rows by a column. Equal ones stay as they came, which is worst first; without an order all do.
 * @param places of the topics in the syllabus
 */
export function sorted(
  rows: readonly TopicCoverage[],
  order: Order | null,
  places: ReadonlyMap<string, number>,
): TopicCoverage[] {
  if (!order) return [...rows];
  const value = (row: TopicCoverage): number => {
    switch (order.column) {
      case 'topic':
        return places.get(row.topicId) ?? 0;
      case 'share':
        return row.share;
      case 'secured':
        return row.securedPart;
      case 'stake':
        return row.atStake;
      case 'evidence':
        return 1 - row.missing;
      case 'next':
        return row.gaps.length;
    }
  };
  const sign = order.isDown ? -1 : 1;
  return rows.toSorted((a, b) => sign * (value(a) - value(b)));
}
