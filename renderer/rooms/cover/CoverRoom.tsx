export function CoverRoom() {
  return <h1>CoverRoom</h1>;
}
