/**
 * Amounts were kept in hundredths whatever the currency; now they are in its own minor units. Where those are no
 * hundredths every amount is turned into them, rounded half away from zero: 1,234.00 JPY was 123400 and is 1234.
 * Values of items are summed anew from what their lots have left.
 */
import type { Migration } from '../migration.ts';

/** SQL for an amount in the new unit. */
const scaled = (amount: string) => `CAST(round(1.0 * ${amount} * times / over) AS INTEGER)`;

export const minorUnits: Migration = {
  number: 8,
  what: 'minor units',
  sql: `
    CREATE TEMP TABLE money_scale AS
      SELECT CASE
          WHEN code IN ('BHD', 'IQD', 'JOD', 'KWD', 'LYD', 'OMR', 'TND') THEN 10
          WHEN code IN ('CLF', 'UYW') THEN 100
          ELSE 1 END AS times,
        CASE WHEN code IN ('BIF', 'CLP', 'DJF', 'GNF', 'ISK', 'JPY', 'KMF', 'KRW', 'PYG', 'RWF', 'UGX', 'UYI', 'VND',
          'VUV', 'XAF', 'XOF', 'XPF') THEN 100 ELSE 1 END AS over
      FROM (SELECT json_extract(settings, '$.currency') AS code FROM workshop);
    DELETE FROM money_scale WHERE times = over;

    INSERT INTO upgrade_note (schema, note)
      SELECT 8, 'Prices were kept in hundredths, which ' || json_extract(workshop.settings, '$.currency')
        || ' does not have: ' || rounded.many || CASE rounded.many WHEN 1 THEN ' price was' ELSE ' prices were' END
        || ' rounded to the nearest whole amount.'
      FROM money_scale, workshop, (SELECT count(*) AS many FROM (
        SELECT price_minor AS minor FROM lot UNION ALL SELECT price_minor FROM offer
        UNION ALL SELECT delivery_minor FROM supplier) WHERE minor % 100 <> 0) AS rounded
      WHERE money_scale.over = 100 AND rounded.many > 0;

    DROP TRIGGER lot_stays;
    UPDATE lot SET price_minor = ${scaled('price_minor')} FROM money_scale;
    CREATE TRIGGER lot_stays BEFORE UPDATE OF id, item_id, received_milli, price_minor ON lot
    BEGIN SELECT RAISE(ABORT, 'what was received stays as it was'); END;
    UPDATE item_balance SET value_minor = coalesce((
        SELECT sum(CAST((2 * lot.price_minor * worth_milli + lot.received_milli) / (2 * lot.received_milli) AS INTEGER))
        FROM lot JOIN lot_balance ON lot_balance.lot_id = lot.id WHERE lot.item_id = item_balance.item_id), 0)
      FROM money_scale;

    UPDATE offer SET price_minor = ${scaled('price_minor')}, breaks = (
        SELECT json_group_array(json_set(value, '$.priceMinor', ${scaled("json_extract(value, '$.priceMinor')")}))
        FROM json_each(offer.breaks))
      FROM money_scale;
    UPDATE supplier SET delivery_minor = ${scaled('delivery_minor')},
        free_from_minor = CASE WHEN free_from_minor IS NOT NULL THEN max(1, ${scaled('free_from_minor')}) END
      FROM money_scale;
    UPDATE workshop SET settings = json_set(settings, '$.pricing.hourlyRateMinor',
        ${scaled("json_extract(settings, '$.pricing.hourlyRateMinor')")})
      FROM money_scale WHERE json_type(settings, '$.pricing.hourlyRateMinor') = 'integer';
    UPDATE workshop SET settings = json_set(settings, '$.pricing.overhead.amountMinor',
        ${scaled("json_extract(settings, '$.pricing.overhead.amountMinor')")})
      FROM money_scale WHERE json_type(settings, '$.pricing.overhead.amountMinor') = 'integer';

    DROP TRIGGER cutting_stays;
    UPDATE cutting SET slots = (
        SELECT json_group_array(json_set(slot.value, '$.lines', json((
          SELECT json_group_array(json_replace(line.value,
            '$.costMinor', ${scaled("json_extract(line.value, '$.costMinor')")},
            '$.area.wasteMinor', ${scaled("json_extract(line.value, '$.area.wasteMinor')")}))
          FROM json_each(slot.value, '$.lines') AS line))))
        FROM json_each(cutting.slots) AS slot)
      FROM money_scale;
    CREATE TRIGGER cutting_stays BEFORE UPDATE ON cutting
    BEGIN SELECT RAISE(ABORT, 'the ledger only grows'); END;
    DROP TABLE money_scale;
  `,
};
