export function Welcome() {
  return <h1>Welcome</h1>;
}
