// The one door to files of finds: what goes out, what comes in, what would become of it.

export { exported, lots } from "./exporting.js";
export { opened, taking } from "./importing.js";
export { TransferError } from "./json.js";
export { inWords, merged, takenInWords } from "./merge.js";
export { ZipError } from "./zip.js";
