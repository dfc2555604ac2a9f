/**
 * Asks the browser not to clear the deck when the disk runs short, and gives whether it promised to. A browser may
 * refuse without asking the student; `unlimitedStorage` in the manifest keeps the deck out of its clearing all the same.
 */
export async function keepForGood(storage: StorageManager): Promise<boolean> {
  return (await storage.persisted()) || (await storage.persist());
}
