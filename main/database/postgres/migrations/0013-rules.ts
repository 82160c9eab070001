/**
 * The rules of the first schema as functions and triggers: numbers in the order of the commits, balances kept beside
 * the ledger, and what may never be changed. Part of a released migration.
 */

/** All statements, in their order. */
export function ruleTexts(): readonly string[] {
  const tables = Object.keys(numbered) as (keyof typeof numbered)[];
  return [functions, ...tables.map(numbering), triggers];
}

const functions = `
  CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN RAISE EXCEPTION '%', TG_ARGV[0]; END $$;

  CREATE FUNCTION item_begins() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN INSERT INTO item_balance VALUES (NEW.id, 0, 0, 0, 0, 0); RETURN NULL; END $$;
  CREATE FUNCTION lot_begins() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN INSERT INTO lot_balance VALUES (NEW.id, 0, 0, 0); RETURN NULL; END $$;
  CREATE FUNCTION length_begins() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN INSERT INTO length_balance VALUES (NEW.id, 0, 0); RETURN NULL; END $$;

  -- Halves are rounded up, as a file rounds them; round() of PostgreSQL would take them to the even number.
  CREATE FUNCTION movement_counts() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    UPDATE lot_balance SET on_hand_milli = on_hand_milli + NEW.on_hand_milli,
      reserved_milli = reserved_milli + NEW.reserved_milli,
      worth_milli = worth_milli + CASE WHEN NEW.length_id IS NULL THEN NEW.on_hand_milli ELSE coalesce((
        SELECT floor(l.worth_ratio * (before.on_hand_milli + NEW.on_hand_milli) + 0.5)::bigint
          - floor(l.worth_ratio * before.on_hand_milli + 0.5)::bigint
        FROM length AS l JOIN length_balance AS before ON before.length_id = l.id
        WHERE l.id = NEW.length_id), 0) END
      WHERE lot_id = NEW.lot_id;
    UPDATE length_balance SET on_hand_milli = on_hand_milli + NEW.on_hand_milli,
      reserved_milli = reserved_milli + NEW.reserved_milli WHERE length_id = NEW.length_id;
    RETURN NULL;
  END $$;

  CREATE FUNCTION worth_minor(price_minor bigint, worth_milli bigint, received_milli bigint) RETURNS bigint
    LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE
    RETURN div(2::numeric * price_minor * worth_milli + received_milli, 2::numeric * received_milli)::bigint;

  CREATE FUNCTION lot_counts() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    UPDATE item_balance SET
      on_hand_milli = item_balance.on_hand_milli + NEW.on_hand_milli - OLD.on_hand_milli,
      reserved_milli = item_balance.reserved_milli + NEW.reserved_milli - OLD.reserved_milli,
      lot_count = lot_count + (NEW.on_hand_milli > 0)::integer - (OLD.on_hand_milli > 0)::integer,
      value_minor = value_minor + worth_minor(lot.price_minor, NEW.worth_milli, lot.received_milli)
        - worth_minor(lot.price_minor, OLD.worth_milli, lot.received_milli)
      FROM lot WHERE lot.id = NEW.lot_id AND item_balance.item_id = lot.item_id;
    RETURN NULL;
  END $$;

  CREATE FUNCTION length_counts() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    UPDATE item_balance
      SET length_count = length_count + (NEW.on_hand_milli > 0)::integer - (OLD.on_hand_milli > 0)::integer
      FROM length AS l JOIN lot ON lot.id = l.lot_id
      WHERE l.id = NEW.length_id AND item_balance.item_id = lot.item_id;
    RETURN NULL;
  END $$;

  CREATE FUNCTION movement_reverses() RETURNS trigger LANGUAGE plpgsql AS $$
  BEGIN
    IF NOT EXISTS (SELECT 1 FROM movement AS taken WHERE taken.id = NEW.reverses
      AND taken.kind IN ('cut', 'returned', 'received', 'corrected', 'written off') AND taken.lot_id = NEW.lot_id
      AND taken.length_id IS NOT DISTINCT FROM NEW.length_id AND taken.plan_id IS NOT DISTINCT FROM NEW.plan_id
      AND taken.on_hand_milli = -NEW.on_hand_milli)
    THEN RAISE EXCEPTION 'a reversal is the row it takes back, the other way round'; END IF;
    RETURN NEW;
  END $$;
`;

/** Tables whose rows are numbered as they come, and the turn under which a number is given out. */
const numbered = {
  lot: 'stash_turn',
  length: 'stash_turn',
  cutting: 'stash_turn',
  movement: 'stash_turn',
  kept_lay: 'lays_turn',
  upgrade_note: 'workshop_turn',
} as const;

/** The first lets another desk finish; the second then sees what that one wrote. The lock is held to the commit. */
function numbering(table: keyof typeof numbered): string {
  return `
    CREATE FUNCTION ${table}_takes_turn() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN LOCK TABLE ${numbered[table]} IN SHARE ROW EXCLUSIVE MODE; RETURN NULL; END $$;
    CREATE TRIGGER ${table}_takes_turn BEFORE INSERT ON ${table}
      FOR EACH STATEMENT EXECUTE FUNCTION ${table}_takes_turn();
    CREATE FUNCTION ${table}_is_numbered() RETURNS trigger LANGUAGE plpgsql AS $$
    BEGIN NEW.entry := (SELECT coalesce(max(entry), 0) + 1 FROM ${table}); RETURN NEW; END $$;
    CREATE TRIGGER ${table}_is_numbered BEFORE INSERT ON ${table}
      FOR EACH ROW EXECUTE FUNCTION ${table}_is_numbered();
  `;
}

const ledgerGrows = 'the ledger only grows';
const receivedStays = 'what was received stays as it was';
const revisionStays = 'a revision of a plan is never changed';
const revisionRemains = 'a revision of a plan is never removed';

/** What may not be done to a table, nor to some of its columns, and why. */
const refusals = [
  { name: 'movement_stays', change: 'UPDATE OR DELETE', table: 'movement', why: ledgerGrows },
  { name: 'cutting_stays', change: 'UPDATE OR DELETE', table: 'cutting', why: ledgerGrows },
  {
    name: 'lot_stays',
    change: 'UPDATE OF entry, id, item_id, received_milli, price_minor OR DELETE',
    table: 'lot',
    why: receivedStays,
  },
  {
    name: 'length_stays',
    change: 'UPDATE OF entry, id, lot_id, worth_ratio OR DELETE',
    table: 'length',
    why: receivedStays,
  },
  { name: 'plan_revision_stays', change: 'UPDATE', table: 'plan_revision', why: revisionStays },
  { name: 'plan_revision_remains', change: 'DELETE', table: 'plan_revision', why: revisionRemains },
] as const;

const triggers = `
  CREATE TRIGGER item_begins AFTER INSERT ON item FOR EACH ROW EXECUTE FUNCTION item_begins();
  CREATE TRIGGER lot_begins AFTER INSERT ON lot FOR EACH ROW EXECUTE FUNCTION lot_begins();
  CREATE TRIGGER length_begins AFTER INSERT ON length FOR EACH ROW EXECUTE FUNCTION length_begins();
  CREATE TRIGGER movement_counts AFTER INSERT ON movement FOR EACH ROW EXECUTE FUNCTION movement_counts();
  CREATE TRIGGER lot_counts AFTER UPDATE ON lot_balance FOR EACH ROW EXECUTE FUNCTION lot_counts();
  CREATE TRIGGER length_counts AFTER UPDATE ON length_balance FOR EACH ROW
    WHEN ((NEW.on_hand_milli > 0) <> (OLD.on_hand_milli > 0)) EXECUTE FUNCTION length_counts();
  CREATE TRIGGER movement_reverses BEFORE INSERT ON movement FOR EACH ROW
    WHEN (NEW.kind = 'reversed') EXECUTE FUNCTION movement_reverses();
  ${refusals
    .map(
      ({ name, change, table, why }) => `
  CREATE TRIGGER ${name} BEFORE ${change} ON ${table} FOR EACH ROW EXECUTE FUNCTION refuse_change('${why}');
  CREATE TRIGGER ${name}_whole BEFORE TRUNCATE ON ${table}
    FOR EACH STATEMENT EXECUTE FUNCTION refuse_change('${why}');`,
    )
    .join('\n')}
`;
