export function CostRoom() {
  return <h1>CostRoom</h1>;
}
