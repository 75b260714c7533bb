/** Milliseconds that this process has worked so far, whatever else the machine does. */
export function worked() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

/** Milliseconds of work for ten megabytes of honest JSON: what others are held against. */
export function honest() {
  const note = "A chip at the toe, and a newer grip";
  const text = JSON.stringify(Array.from({ length: 200_000 }, (_, i) => [i, note]));
  const start = worked();
  JSON.parse(text);
  return worked() - start;
}
