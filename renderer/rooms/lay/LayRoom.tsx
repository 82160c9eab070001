export function LayRoom() {
  return <h1>LayRoom</h1>;
}
