export function ToBuyRoom() {
  return <h1>ToBuyRoom</h1>;
}
