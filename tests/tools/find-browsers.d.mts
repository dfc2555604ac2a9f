export function findProgram(...names: string[]): string | undefined;
export function findChromium(): string | undefined;
export function findFirefox(): string | undefined;
export function missingPackages(): string[];
