export function PlanRoom() {
  return <h1>PlanRoom</h1>;
}
