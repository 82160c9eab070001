/** A plan that is put into the season; null: as many coats as the plan makes. */

export interface PutIn {
  readonly planId: string;
  readonly coatCount: number | null;
}
