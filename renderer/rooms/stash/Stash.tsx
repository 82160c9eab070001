export function Stash({ itemId }: { itemId: string | null }) {
  return <h1>Stash {itemId}</h1>;
}
