/** Milliseconds that this process has worked so far, whatever else the machine does. */
export function worked() {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}
