/** How many tests ended in which way. */
export interface Totals {
  passed: number;
  failed: number;
  skipped: number;
}

interface Report {
  numTotalTests: number;
  numPassedTests: number;
  numFailedTests: number;
  testResults: { status: string; assertionResults: { status: string }[] }[];
}

/** Adds two sets of totals. */
export function sum(a: Totals, b: Totals): Totals {
  return { passed: a.passed + b.passed, failed: a.failed + b.failed, skipped: a.skipped + b.skipped };
}

/**
 * Totals of a Vitest report. A file that failed without a failed test in it (it did not load, or a hook broke)
 * counts as one failure, and so does a run that broke in any way that no test shows.
 */
export function countReport(json: string | undefined, exitCode: number | null): Totals {
  const broken: Totals = { passed: 0, failed: 1, skipped: 0 };
  let report: Report;
  try {
    report = JSON.parse(json ?? '') as Report;
  } catch {
    return broken;
  }
  if (report.numTotalTests === 0) return broken;
  const brokenFiles = report.testResults.filter(({ status, assertionResults }) => {
    return status === 'failed' && !assertionResults.some((test) => test.status === 'failed');
  });
  const { numTotalTests, numPassedTests, numFailedTests } = report;
  const totals: Totals = {
    passed: numPassedTests,
    failed: numFailedTests + brokenFiles.length,
    skipped: numTotalTests - numPassedTests - numFailedTests,
  };
  return exitCode !== 0 && totals.failed === 0 ? sum(totals, broken) : totals;
}
