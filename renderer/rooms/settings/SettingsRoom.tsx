export function SettingsRoom() {
  return <h1>SettingsRoom</h1>;
}
