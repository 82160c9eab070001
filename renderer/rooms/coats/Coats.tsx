export function Coats() {
  return <h1>Coats</h1>;
}
