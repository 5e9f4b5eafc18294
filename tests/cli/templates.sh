#!/bin/bash
# templates.sh WEND: a firm's own templates as they are used: written out, changed, found, and refused before anything is
# planned.
set -u
wend=$1
here=$(cd "$(dirname "$0")" && pwd)
route=$here/../../routes/well-pump.yaml
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
. "$here/holding.sh"
export XDG_CONFIG_HOME=$work/none HOME=$work

expect "plain" 0 "$wend" plan "$route" --out plain
expect "the built-in ones" 0 "$wend" templates --out mine
holds "all of them" test "$(ls mine | tr '\n' ' ')" = "as-laid.xsl brief.xsl card.xsl design.xsl house.css house.xsl papers.xsl parts.xsl quotation.xsl readings.xsl test.xsl "
holds "as they are kept" diff -r mine "$here/../../templates" --exclude='*.rng' --exclude='survey*'
expect "unchanged they make the same papers" 0 "$wend" plan "$route" --templates mine --out same
holds "byte for byte" diff -r plain same
expect "from another folder" 0 sh -c "mkdir far && cd far && '$wend' plan '$route'"
holds "the same papers" diff -r plain far

rm mine/[d-t]*.xsl
sed -i "s/key('label', 'day')/'Our own order of the day'/" mine/brief.xsl
expect "one file changed" 0 "$wend" plan "$route" --templates=mine --out changed
holds "it is used" grep -q 'Our own order of the day' changed/well-pump.brief.html
holds "the paper says so at its end" sh -c "tail -c 300 changed/well-pump.brief.html | grep -q 'Made with templates that are not as they are built in: brief.xsl\.'"
holds "the summary names the folder" sh -c "tr -s ' \n' '  ' <out | grep -q 'templates: mine'"
holds "in the pack too" grep -q 'Our own order of the day' changed/well-pump.pack.html
sed -z 's|\n<p style=[^>]*>Made with templates[^<]*</p>||' changed/well-pump.test.html >but-for-the-note
holds "the others are the built-in ones" cmp plain/well-pump.test.html but-for-the-note

# templates of one's own are given the whole plan, those built in what they read of it: what is printed is the same
mkdir whole ours
cp "$here/../../templates/papers.xsl" whole && echo '<!-- ours -->' >>whole/papers.xsl
for each in "$here"/../../routes/*.yaml "$here"/../../routes/starters/*.yaml; do
    "$wend" plan "$each" --out ours -q >/dev/null && "$wend" plan "$each" --templates whole --out theirs -q >/dev/null
done
sed -zi 's|\n<p style=[^>]*>Made with templates[^<]*</p>||' theirs/*.html
holds "ours lack nothing of the plan" diff -r ours theirs
holds "in many papers" test "$(ls theirs/*.html | wc -l)" -ge 60

mkdir -p config/wend .config/wend
cp -r mine config/wend/templates
XDG_CONFIG_HOME=$work/config expect "the user's folder" 0 "$wend" plan "$route" --out user
holds "is found" diff -r changed user
expect "without XDG_CONFIG_HOME" 0 sh -c "cp -r mine .config/wend/templates; unset XDG_CONFIG_HOME; '$wend' plan '$route' --out home"
holds "the home folder's is found" diff -r changed home
rm -r .config

sed -i 's/<div class="blanks who">/<xsl:value-of select="document(\x27\/etc\/hostname\x27)"\/>\n&/' mine/brief.xsl
expect "one that reads a file" 2 "$wend" plan "$route" --templates mine --out nothing
holds "is told by file and line" grep -q '^mine/brief.xsl:[0-9]*:1: error: document() is not taken .*\[template-refused\]$' err
holds "nothing is written" test ! -e nothing
expect "told before the route is read" 2 "$wend" plan no-such.yaml --templates mine
holds "and not the route" sh -c '! grep -q no-such.yaml err'
expect "no such folder" 2 "$wend" plan "$route" --templates no-such
mkdir empty
expect "a folder without templates" 2 "$wend" plan "$route" --templates empty
expect "--templates without folder" 2 "$wend" plan "$route" --templates
echo '<p>' >empty/brief.xsl
expect "no XML" 2 "$wend" plan "$route" --templates empty
holds "says so" grep -q 'empty/brief.xsl:2:1: error: this template is not XML' err
cat >empty/brief.xsl <<'X'
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">
<xsl:template match="plan" mode="brief"><xsl:element name="script">1</xsl:element></xsl:template>
</xsl:stylesheet>
X
expect "a page that would run something" 3 "$wend" plan "$route" --templates empty --out nothing
holds "is not written" test ! -e nothing
holds "and told" grep -q 'template-page' err
cat >empty/brief.xsl <<'X'
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">
<xsl:template match="plan" mode="brief"><xsl:for-each select="//*"><xsl:for-each select="//*"><xsl:for-each select="//*">
<p>and so on</p></xsl:for-each></xsl:for-each></xsl:for-each></xsl:template>
</xsl:stylesheet>
X
limit="ulimit -v 400000" # sanitizers reserve far more, and are left to the bound alone
sh -c "$limit; '$wend' --version" >/dev/null 2>&1 || limit=:
expect "a page without end" 3 sh -c "$limit; '$wend' plan '$route' --templates empty --out nothing"
holds "is told by file and line, with how much it may take" grep -q '^empty/brief.xsl:[23]:1: error: this template takes more than the [0-9]* MB .*\[template-memory\]$' err
holds "nothing is written then either" test ! -e nothing
printf '%d passed, %d failed\n' "$passed" "$failed"
[ "$failed" = 0 ]
