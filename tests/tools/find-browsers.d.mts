export function findProgram(...names: string[]): string | undefined;
export function findChromium(): string | undefined;
export function findFirefox(): string | undefined;
export const PAGES: string;
export function missingPackages(wanted?: { pages?: boolean }): string[];
