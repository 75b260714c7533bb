/** In place of phone/checking.js: the worked examples are not in this file. */

export function startCheck() {}
