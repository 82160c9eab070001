export function NeedsRoom() {
  return <h1>NeedsRoom</h1>;
}
