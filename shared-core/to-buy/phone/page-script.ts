/**
 * What runs in the page for the phone, as the text that stands in it. It is plain JavaScript of 2018, since phones are
 * old, and reads all it needs from the attributes of the page; nothing that a maker typed is ever part of it.
 * The page allows exactly this text, by its hash: after a change a test names the new one.
 */
export const pageScript = `'use strict';
(function () {
  var signs = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
  var page = document.body.dataset;
  var boxes = Array.prototype.slice.call(document.querySelectorAll('input[data-offer]'));
  var key = 'ticks ' + page.planId + ' ' + page.listMark;
  var store = null;
  try {
    store = window.localStorage;
    store.setItem(key + ' test', '1');
    store.removeItem(key + ' test');
  } catch (error) {
    store = null;
  }
  document.getElementById('kept').hidden = store === null;
  document.getElementById('unkept').hidden = store !== null;

  function hashOf(text) {
    var hash = 0x811c9dc5;
    for (var i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193) >>> 0;
    return hash;
  }
  function code() {
    var bits = [];
    boxes.forEach(function (box) {
      var place = Number(box.dataset.place);
      var at = Math.floor(place / 5);
      bits[at] = (bits[at] || 0) + (box.checked ? 1 << (place % 5) : 0);
    });
    var body = page.planMark + page.listMark + bits.map(function (each) { return signs[each]; }).join('');
    var hash = hashOf(body);
    return (body + signs[hash & 31] + signs[(hash >>> 5) & 31]).replace(/(.{4})(?=.)/g, '$1-');
  }
  function money(minor) {
    var places = Number(page.places);
    var parts = (minor / Math.pow(10, places)).toFixed(places).split('.');
    parts[0] = parts[0].replace(/\\B(?=(\\d{3})+(?!\\d))/g, page.groupingSign);
    return parts.join(page.decimalSign) + ' ' + page.currency;
  }
  function show() {
    var ticked = boxes.filter(function (box) { return box.checked; });
    var minor = ticked.reduce(function (sum, box) { return sum + Number(box.dataset.minor); }, 0);
    document.getElementById('count').textContent = page.tickedWords.replace('##', boxes.length).replace('#', ticked.length);
    document.getElementById('sum').textContent = money(minor);
    document.getElementById('code').textContent = code();
  }
  function keep() {
    if (store === null) return;
    try {
      store.setItem(key, JSON.stringify(boxes.filter(function (box) { return box.checked; }).map(function (box) { return box.dataset.offer; })));
    } catch (error) {
      document.getElementById('kept').hidden = true;
      document.getElementById('unkept').hidden = false;
    }
  }
  function say(text) { document.getElementById('said').textContent = text; }

  try {
    var before = store && JSON.parse(store.getItem(key) || 'null');
    if (Array.isArray(before)) boxes.forEach(function (box) { box.checked = before.indexOf(box.dataset.offer) !== -1; });
  } catch (error) {
    say(page.unreadWords);
  }
  boxes.forEach(function (box) {
    box.addEventListener('change', function () { keep(); show(); say(''); });
  });
  document.getElementById('copy').addEventListener('click', function () {
    var select = function () {
      var range = document.createRange();
      range.selectNodeContents(document.getElementById('code'));
      window.getSelection().removeAllRanges();
      window.getSelection().addRange(range);
      say(page.markedWords);
    };
    if (!navigator.clipboard) return select();
    navigator.clipboard.writeText(code()).then(function () { say(page.copiedWords); }, select);
  });
  document.getElementById('save').addEventListener('click', function () {
    var lines = boxes.map(function (box) {
      return { offerId: box.dataset.offer, name: box.dataset.name, isTicked: box.checked };
    });
    var text = JSON.stringify({ kind: page.fileKind, version: 1, planId: page.planId, lines: lines });
    var link = document.createElement('a');
    link.href = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
    link.download = 'ticks.json';
    link.click();
    say(page.savedWords);
  });
  show();
})();
`;

/** SHA-256 of the text above, base64. */
export const pageScriptHash = 'Mf/iy8OppWDOCm6KCn12i/Gr5dkPC+nXYjGH9jhoB10=';
