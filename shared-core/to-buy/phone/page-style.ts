/** How the page for the phone looks, as the text that stands in it; allowed by its hash like the script. */
export const pageStyle = `:root {
  color-scheme: light dark;
  --ground: #f2f4f2; --sheet: #ffffff; --ink: #17262a; --soft: #4d5f63; --line: #dbe1de; --accent: #17614f; --on: #ffffff;
}
@media (prefers-color-scheme: dark) {
  :root { --ground: #11191b; --sheet: #182225; --ink: #e8efec; --soft: #a9b8b6; --line: #2c3a3d; --accent: #7cc9b2; --on: #10201b; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 1.0625rem/1.4 system-ui, sans-serif; }
main { max-width: 40rem; margin: 0 auto; padding: 0 1rem 2rem; }
h1 { font-size: 1.5rem; line-height: 1.2; margin: 1.25rem 0 0.25rem; }
h2 { font-size: 1.0625rem; margin: 1.75rem 0 0.5rem; }
p { margin: 0.25rem 0; }
.soft { color: var(--soft); font-size: 0.9375rem; }
.bar { position: sticky; top: 0; z-index: 1; display: flex; justify-content: space-between; gap: 1rem; padding: 0.75rem 1rem; margin: 1rem -1rem 0; background: var(--ground); border-bottom: 1px solid var(--line); font-weight: 600; font-variant-numeric: tabular-nums; }
ul { list-style: none; margin: 0; padding: 0; background: var(--sheet); border: 1px solid var(--line); border-radius: 0.875rem; overflow: hidden; }
li + li { border-top: 1px solid var(--line); }
label { display: grid; grid-template-columns: 1.75rem 1fr auto; gap: 0.125rem 0.75rem; align-items: center; min-height: 3.75rem; padding: 0.75rem 1rem; cursor: pointer; }
input { grid-row: 1 / 3; width: 1.75rem; height: 1.75rem; margin: 0; accent-color: var(--accent); }
.name { font-weight: 600; overflow-wrap: anywhere; }
.price { white-space: nowrap; font-variant-numeric: tabular-nums; }
.more { grid-column: 2 / 4; color: var(--soft); font-size: 0.9375rem; overflow-wrap: anywhere; }
input:checked ~ .name { text-decoration: line-through; color: var(--soft); }
.back { margin-top: 2.5rem; padding: 1rem; background: var(--sheet); border: 1px solid var(--line); border-radius: 0.875rem; }
.back h2 { margin-top: 0; }
#code { display: block; margin: 0.75rem 0; font: 600 1.375rem/1.4 ui-monospace, monospace; letter-spacing: 0.04em; overflow-wrap: anywhere; user-select: all; -webkit-user-select: all; }
button { min-height: 3rem; padding: 0 1.25rem; margin: 0.25rem 0.5rem 0.25rem 0; border: 1px solid var(--accent); border-radius: 0.5rem; background: transparent; color: var(--accent); font: inherit; font-weight: 600; }
#copy { background: var(--accent); color: var(--on); }
:focus-visible { outline: 3px solid var(--accent); outline-offset: 2px; }
`;

/** SHA-256 of the text above, base64. */
export const pageStyleHash = 'QaHsZ0GL4RlCIJZU0FooCVzvAiR5caVW+WMLnNFMNNA=';
