/** What is said beside a control of an attempt that failed. */

/** Errors whose message is a whole sentence for the user. */
const TOLD = [
  "DraftError",
  "PhotoError",
  "RecordError",
  "ShelfError",
  "StoreError",
  "TransferError",
  "ZipError",
];

/**
 * The sentence of an error that was made to be shown; any other is a mistake, and goes on.
 * @param {unknown} error
 */
export function sentence(error) {
  const { name, message } = /** @type {Error} */ (error);
  if (TOLD.includes(name)) return message;
  throw error;
}

/**
 * Does the work, and says why where it fails.
 * @param {() => Promise<void>} work
 * @param {(why: string) => void} say
 * @param {(error: Error) => void} failed for what nobody foresaw
 */
export function attempt(work, say, failed) {
  return work()
    .catch((error) => say(sentence(error)))
    .catch(failed);
}
