#!/bin/bash
# ubl_schema.sh SCHEMAS WEND SAMPLES: every order is valid against the published OASIS UBL 2.1 schema. SCHEMAS is the
# folder that holds xsdrt/; where it or xmllint is not there the test is skipped, and says why.
set -u
schema=$1/xsdrt/maindoc/UBL-Order-2.1.xsd wend=$2 samples=$3
here=$(cd "$(dirname "$0")" && pwd)
[ -f "$schema" ] || { echo "SKIPPED: no UBL 2.1 schema at $schema (set WEND_UBL_SCHEMAS)"; exit 77; }
command -v xmllint >/dev/null || { echo "SKIPPED: there is no xmllint (package libxml2-utils)"; exit 77; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
bad=0
mkdir "$work/good" "$work/bad"
"$samples" "$work/good" 150 || bad=1
# and whole routes through the program
"$wend" order "$here"/../../routes/*.yaml --order "$here/golden/order.yaml" --out "$work/good" >/dev/null || bad=1
"$wend" order "$here"/../../routes/*.yaml --date 2026-05-14 --out "$work/good" >/dev/null || bad=1
# the schema takes long to read: one call for all
xmllint --nonet --noout --schema "$schema" "$work"/good/*.xml >"$work/told" 2>&1 || { bad=1; grep -v ' validates$' "$work/told" | head -20; }
count=$(ls "$work"/good/*.xml | wc -l) valid=$(grep -c ' validates$' "$work/told")
echo "$valid of $count orders are valid"
[ "$count" -ge 152 ] && [ "$valid" = "$count" ] || bad=1
# what is priced was among them: with and without a sum
priced=$(grep -l PriceAmount "$work"/good/*.xml | wc -l) summed=$(grep -l PayableAmount "$work"/good/*.xml | wc -l)
echo "$priced of them have prices, $summed a sum"
[ "$priced" -ge 80 ] && [ "$summed" -ge 20 ] && [ "$summed" -lt "$priced" ] || bad=1
# a schema that refuses nothing would prove nothing
sample=$work/good/PO-1042.order.xml
grep -v IssueDate "$sample" >"$work/bad/no-day.xml"
sed 's/<cbc:IssueDate>.*</<cbc:IssueDate>14 May</' "$sample" >"$work/bad/odd-day.xml"
sed 's/LineCountNumeric>[0-9]*</LineCountNumeric>many</' "$sample" >"$work/bad/no-number.xml"
sed 's/cbc:CityName/cbc:TownName/g' "$sample" >"$work/bad/odd-name.xml"
sed 's/ currencyID="[A-Z]*"//' "$sample" >"$work/bad/no-currency.xml"
sed '/<cac:OrderLine>/,$d' "$sample" >"$work/bad/no-lines.xml"
echo '</Order>' >>"$work/bad/no-lines.xml"
xmllint --nonet --noout --schema "$schema" "$work"/bad/*.xml >"$work/told" 2>&1
refused=$(grep -c ' fails to validate$' "$work/told")
echo "$refused of 6 spoilt orders are refused"
[ "$refused" = 6 ] && [ "$bad" = 0 ]
