<?xml version="1.0" encoding="UTF-8"?>
<!-- What all papers share: head and foot, the title block, boxes to tick and lines to write on; and the headings and
     labels of the catalogue by their names, so that no template holds words of a language. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform" xmlns:svg="http://www.w3.org/2000/svg">

  <!-- what matters and is open alike for several runs is one question -->
  <xsl:key name="same-open" match="/plan/papers/open[@matters = 'yes']" use="concat(@title, '|', @settles)"/>
  <xsl:key name="label" match="/plan/papers/labels/label" use="@name"/>
  <!-- what is said once of many is found by these, not by looking back over all before it -->
  <xsl:key name="reason" match="/plan/papers/sheet/row[@because]" use="concat(generate-id(..), @because)"/>
  <xsl:key name="factor-source" match="/plan/papers/sheet/row/factor[@source]" use="concat(generate-id(../..), @symbol, '|', @source)"/>
  <xsl:key name="warning" match="/plan/warnings/warning" use="."/>
  <xsl:key name="unmade" match="/plan/papers/open" use="@title"/>
  <xsl:key name="like" match="/plan/papers/sheet[@like]" use="@like"/>
  <xsl:key name="bad" match="/plan/papers/tests/test" use="concat(@name, '|', .)"/>

  <!-- In the pack every heading stands one step lower. -->
  <xsl:variable name="h1"><xsl:choose><xsl:when test="/plan/print/@paper = 'pack'">h2</xsl:when><xsl:otherwise>h1</xsl:otherwise></xsl:choose></xsl:variable>
  <xsl:variable name="h2"><xsl:choose><xsl:when test="/plan/print/@paper = 'pack'">h3</xsl:when><xsl:otherwise>h2</xsl:otherwise></xsl:choose></xsl:variable>
  <xsl:variable name="h3"><xsl:choose><xsl:when test="/plan/print/@paper = 'pack'">h4</xsl:when><xsl:otherwise>h3</xsl:otherwise></xsl:choose></xsl:variable>

  <xsl:template name="paper-name">
    <xsl:param name="which"/>
    <xsl:choose>
      <xsl:when test="$which = 'brief'"><xsl:value-of select="key('label', 'crew-brief')"/></xsl:when>
      <xsl:when test="$which = 'parts'"><xsl:value-of select="key('label', 'parts-list')"/></xsl:when>
      <xsl:when test="$which = 'design'"><xsl:value-of select="key('label', 'design-sheet')"/></xsl:when>
      <xsl:when test="$which = 'test'"><xsl:value-of select="key('label', 'test-sheet')"/></xsl:when>
      <xsl:when test="$which = 'quotation'"><xsl:value-of select="key('label', 'quotation')"/></xsl:when>
      <xsl:when test="$which = 'card'"><xsl:value-of select="key('label', 'card')"/></xsl:when>
      <xsl:when test="$which = 'readings'"><xsl:value-of select="key('label', 'readings-paper')"/></xsl:when>
      <xsl:when test="$which = 'as-laid'"><xsl:value-of select="key('label', 'as-laid-sheet')"/></xsl:when>
      <xsl:otherwise><xsl:value-of select="key('label', 'job-pack')"/></xsl:otherwise>
    </xsl:choose>
  </xsl:template>

  <xsl:template name="head">
    <head>
      <meta name="viewport" content="width=device-width, initial-scale=1"/>
      <title>
        <xsl:call-template name="paper-name"><xsl:with-param name="which" select="/plan/print/@paper"/></xsl:call-template>
        <xsl:text>: </xsl:text>
        <xsl:choose><xsl:when test="/plan/print/@paper = 'card'"><xsl:value-of select="key('label', 'every-job')"/></xsl:when><xsl:otherwise><xsl:value-of select="/plan/job/@title"/></xsl:otherwise></xsl:choose>
      </title>
      <style>
        <!-- before the style sheet, so that one of your own can number the sheets otherwise -->
        <xsl:text>@page { @bottom-right { content: counter(page) " </xsl:text>
        <xsl:value-of select="key('label', 'of-sheets')"/>
        <xsl:text> " counter(pages); } } </xsl:text>
        <xsl:value-of select="/plan/print/style"/>
        <!-- the mark is hexadecimal digits and a hyphen, made by the program -->
        <xsl:text>@page { @bottom-left { content: "</xsl:text>
        <xsl:value-of select="key('label', 'sheet-mark')"/>
        <xsl:text> </xsl:text>
        <xsl:value-of select="/plan/print/@mark"/>
        <xsl:text>" } }</xsl:text>
      </style>
    </head>
  </xsl:template>

  <xsl:template name="title-block">
    <xsl:param name="which"/>
    <header class="title-block">
      <div class="title">
        <xsl:element name="{$h1}">
          <span class="kind"><xsl:call-template name="paper-name"><xsl:with-param name="which" select="$which"/></xsl:call-template></span>
          <xsl:text> </xsl:text>
          <span class="job"><xsl:value-of select="/plan/job/@title"/></span>
        </xsl:element>
        <xsl:call-template name="job-facts"/>
      </div>
      <xsl:choose>
        <xsl:when test="$which = 'readings'"><xsl:call-template name="readings-verdict"/></xsl:when>
        <xsl:otherwise><xsl:call-template name="verdict"><xsl:with-param name="which" select="$which"/></xsl:call-template></xsl:otherwise>
      </xsl:choose>
    </header>
    <xsl:if test="/plan/print/@language != 'en'">
      <p class="small"><xsl:value-of select="key('label', 'english-governs')"/><xsl:text> </xsl:text><span lang="en"><xsl:value-of select="key('label', 'in-english')"/></span></p>
    </xsl:if>
    <xsl:call-template name="stop"/>
    <xsl:if test="/plan/warnings/warning">
      <div class="warnings">
        <p><strong><xsl:value-of select="key('label', 'warnings')"/></strong></p>
        <ul><xsl:for-each select="/plan/warnings/warning[count(. | key('warning', .)[1]) = 1]"><li><xsl:value-of select="."/></li></xsl:for-each></ul>
      </div>
    </xsl:if>
  </xsl:template>

  <xsl:template name="job-facts">
    <dl class="job-facts">
      <xsl:if test="/plan/job/@site"><div><dt><xsl:value-of select="key('label', 'site')"/></dt><dd><xsl:value-of select="/plan/job/@site"/></dd></div></xsl:if>
      <xsl:if test="/plan/job/@reference"><div><dt><xsl:value-of select="key('label', 'job')"/></dt><dd><xsl:value-of select="/plan/job/@reference"/></dd></div></xsl:if>
      <div class="on-screen"><dt><xsl:value-of select="key('label', 'route')"/></dt><dd><xsl:value-of select="/plan/@route"/></dd></div>
      <xsl:if test="/plan/job/@surveyed"><div><dt><xsl:value-of select="key('label', 'surveyed')"/></dt><dd><xsl:value-of select="/plan/job/@surveyed"/></dd></div></xsl:if>
      <div class="on-screen"><dt><xsl:value-of select="key('label', 'sheet-mark')"/></dt><dd class="mark"><xsl:value-of select="/plan/print/@mark"/></dd></div>
    </dl>
  </xsl:template>

  <!-- PASS says how far it goes: what was not checked stands beside it. FAIL is repeated, loud, in "stop". -->
  <xsl:template name="verdict">
    <xsl:param name="which" select="$paper"/>
    <!-- of a plan that is open the rest stands below it, with what settles it -->
    <xsl:variable name="unmade" select="/plan/papers/open[/plan/@verdict != 'open' or @matters = 'no']"/>
    <p class="verdict {/plan/@verdict}">
      <strong><xsl:choose><xsl:when test="/plan/@verdict = 'pass'">PASS</xsl:when><xsl:when test="/plan/@verdict = 'open'">OPEN</xsl:when><xsl:otherwise>FAIL</xsl:otherwise></xsl:choose></strong>
      <span><xsl:choose><xsl:when test="/plan/@verdict = 'open'"><xsl:value-of select="key('label', 'not-every-check')"/></xsl:when><xsl:when test="/plan/@verdict = 'fail'"><xsl:value-of select="key('label', 'does-not-pass')"/></xsl:when><xsl:otherwise><xsl:value-of select="/plan/@verdict-text"/></xsl:otherwise></xsl:choose></span>
      <xsl:if test="$unmade">
        <span class="strong"><xsl:value-of select="key('label', 'not-checked')"/><xsl:text>: </xsl:text><xsl:for-each select="$unmade[count(. | key('unmade', @title)[1]) = 1]"><xsl:if test="position() &gt; 1">; </xsl:if><xsl:value-of select="@within"/></xsl:for-each><xsl:if test="$which != 'design'"><xsl:text> (</xsl:text><xsl:value-of select="key('label', 'see-design-sheet')"/><xsl:text>)</xsl:text></xsl:if></span>
      </xsl:if>
    </p>
  </xsl:template>

  <!-- What is built; a sentence may have a lead and a word that must stand out before it. -->
  <xsl:template name="said">
    <div>
      <!-- of several runs a line each; of one, a paragraph -->
      <xsl:attribute name="class">said<xsl:if test="count(/plan/run) &gt; 1"> several</xsl:if></xsl:attribute>
      <xsl:for-each select="/plan/papers/said/sentence">
        <p>
          <xsl:if test="@strong"><xsl:value-of select="@lead"/><xsl:text> </xsl:text><strong><xsl:value-of select="@strong"/></strong><xsl:text> </xsl:text></xsl:if>
          <xsl:value-of select="."/>
        </p>
      </xsl:for-each>
    </div>
  </xsl:template>

  <xsl:template name="stop">
    <xsl:variable name="open" select="/plan/papers/open[@matters = 'yes']"/>
    <xsl:if test="/plan/@verdict = 'open'">
      <div class="stop open">
        <p class="stop-word"><strong><xsl:value-of select="key('label', 'settle-first')"/></strong></p>
        <p><xsl:value-of select="key('label', 'nothing-fails-but')"/></p>
        <ul>
          <xsl:for-each select="$open[generate-id() = generate-id(key('same-open', concat(@title, '|', @settles))[1])]">
            <xsl:if test="position() &lt;= 12"><li><strong><xsl:value-of select="@title"/></strong><xsl:text> (</xsl:text><xsl:for-each select="key('same-open', concat(@title, '|', @settles))"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@run"/></xsl:for-each><xsl:text>)</xsl:text><xsl:if test="@settles"><xsl:text>: </xsl:text><xsl:value-of select="key('label', 'settled-by')"/><xsl:text> </xsl:text><xsl:value-of select="@settles"/></xsl:if></li></xsl:if>
          </xsl:for-each>
        </ul>
        <xsl:if test="count($open[generate-id() = generate-id(key('same-open', concat(@title, '|', @settles))[1])]) &gt; 12"><p><xsl:value-of select="key('label', 'and-more')"/></p></xsl:if>
        <p><xsl:value-of select="key('label', 'build-nothing-on-it')"/></p>
      </div>
    </xsl:if>
    <xsl:if test="/plan/@verdict = 'fail'">
      <div class="stop">
        <p class="stop-word"><strong><xsl:value-of select="key('label', 'do-not-build')"/></strong></p>
        <p><xsl:value-of select="key('label', 'these-fail')"/></p>
        <ul>
          <xsl:for-each select="/plan/papers/sheet/check[@result = 'fail']">
            <xsl:if test="position() &lt;= 12"><li><strong><xsl:value-of select="@title"/></strong><xsl:text> (</xsl:text><xsl:value-of select="../@run"/><xsl:text>)</xsl:text><xsl:if test="@value"><xsl:text>: </xsl:text><xsl:value-of select="@value"/><xsl:text>, </xsl:text><xsl:value-of select="key('label', 'allowed')"/><xsl:text> </xsl:text><xsl:value-of select="@limit"/></xsl:if></li></xsl:if>
          </xsl:for-each>
        </ul>
        <xsl:if test="count(/plan/papers/sheet/check[@result = 'fail']) &gt; 12"><p><xsl:value-of select="key('label', 'and-more')"/></p></xsl:if>
        <p><xsl:value-of select="key('label', 'give-it-back')"/></p>
      </div>
    </xsl:if>
  </xsl:template>

  <xsl:template name="foot">
    <footer class="foot">
      <p>
        <xsl:call-template name="foot-words"/>
      </p>
    </footer>
  </xsl:template>

  <xsl:template name="foot-words">
    <xsl:if test="/plan/print/@paper = 'brief'"><xsl:value-of select="key('label', 'common-practice')"/><xsl:text> </xsl:text></xsl:if>
    <xsl:if test="/plan/print/@paper != 'card'">
      <xsl:value-of select="key('label', 'sheet-mark')"/><xsl:text> </xsl:text><xsl:value-of select="/plan/print/@mark"/>
      <xsl:text>: </xsl:text><xsl:value-of select="key('label', 'same-mark')"/><xsl:text> </xsl:text>
    </xsl:if>
    <xsl:for-each select="/plan/papers/range"><strong><xsl:value-of select="."/><xsl:text>.</xsl:text></strong><xsl:text> </xsl:text></xsl:for-each>
    <!-- the brief's drawing names the rules; what they leave out is the designer's to know -->
    <xsl:if test="/plan/print/@paper != 'brief'">
      <xsl:value-of select="key('label', 'rules')"/><xsl:text>: </xsl:text>
      <xsl:value-of select="/plan/@rules-text"/>
      <xsl:text>.</xsl:text>
    </xsl:if>
    <!-- the card says it among its own lines -->
    <xsl:if test="/plan/print/@paper != 'card'"><xsl:text> </xsl:text><xsl:value-of select="key('label', 'last-word')"/></xsl:if>
  </xsl:template>

  <!-- A box to tick and a line to write on; what they are for stands beside them in words. -->
  <xsl:template name="box"><span class="box" aria-hidden="true"></span></xsl:template>
  <xsl:template name="blank">
    <xsl:param name="label"/>
    <span class="blank"><span class="blank-label"><xsl:value-of select="$label"/></span><span class="line" aria-hidden="true"></span></span>
  </xsl:template>

  <!-- A text with its blanks "____" ruled by the style sheet, twice as long for "________", and the numbers of segments,
       which stand between angle brackets, in a ring as on the drawing. -->
  <xsl:template name="fill">
    <xsl:param name="text" select="."/>
    <xsl:choose>
      <xsl:when test="contains($text, '&#10216;') and not(contains(substring-before($text, '&#10216;'), '____'))">
        <xsl:value-of select="substring-before($text, '&#10216;')"/><span class="at"><xsl:value-of select="substring-before(substring-after($text, '&#10216;'), '&#10217;')"/></span>
        <xsl:call-template name="fill"><xsl:with-param name="text" select="substring-after($text, '&#10217;')"/></xsl:call-template>
      </xsl:when>
      <xsl:when test="contains($text, '____')">
        <xsl:variable name="after" select="substring-after($text, '____')"/>
        <xsl:variable name="long" select="starts-with($after, '____')"/>
        <xsl:variable name="rest" select="substring($after, 1 + 4 * $long)"/>
        <xsl:variable name="stop" select="substring($rest, 1, number(contains('.,;', substring($rest, 1, 1))))"/><!-- stays on the line's end -->
        <xsl:value-of select="substring-before($text, '____')"/><span class="nowrap"><span aria-hidden="true"><xsl:attribute name="class">fill<xsl:if test="$long"> long</xsl:if></xsl:attribute></span><xsl:value-of select="$stop"/></span>
        <xsl:call-template name="fill"><xsl:with-param name="text" select="substring($rest, 1 + string-length($stop))"/></xsl:call-template>
      </xsl:when>
      <xsl:otherwise><xsl:value-of select="$text"/></xsl:otherwise>
    </xsl:choose>
  </xsl:template>

  <!-- "a|b|c": a line to write on for each -->
  <xsl:template name="blanks">
    <xsl:param name="labels"/>
    <xsl:choose>
      <xsl:when test="contains($labels, '|')">
        <xsl:call-template name="blank"><xsl:with-param name="label" select="substring-before($labels, '|')"/></xsl:call-template>
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="substring-after($labels, '|')"/></xsl:call-template>
      </xsl:when>
      <xsl:when test="$labels != ''">
        <xsl:call-template name="blank"><xsl:with-param name="label" select="$labels"/></xsl:call-template>
      </xsl:when>
    </xsl:choose>
  </xsl:template>

  <!-- The diagram: its sheets, each at its own size, and for a narrow screen the same facts one segment under the other.
       The style sheet shows one of the two; paper has the sheets. -->
  <xsl:template name="diagram">
    <div class="diagram" role="region" aria-label="{key('label', 'run-diagram')}" tabindex="0">
      <xsl:copy-of select="/plan/print/diagram/svg:svg"/>
    </div>
    <div class="narrow"><xsl:copy-of select="/plan/print/narrow/svg:svg"/></div>
  </xsl:template>

  <!-- the core table of a run, where it has one -->
  <xsl:template name="cores">
    <table class="cores">
      <caption><xsl:value-of select="key('label', 'cores')"/></caption>
      <thead><tr><th scope="col"><xsl:value-of select="key('label', 'core')"/></th><th scope="col"><xsl:value-of select="key('label', 'sleeve')"/></th><th scope="col"><xsl:value-of select="key('label', 'supply-end')"/></th><th scope="col"><xsl:value-of select="key('label', 'far-end')"/></th></tr></thead>
      <tbody>
        <xsl:for-each select="core"><tr><th scope="row"><xsl:value-of select="@colour"/></th><td><xsl:value-of select="@sleeve"/></td><td><xsl:value-of select="@supply"/></td><td><xsl:value-of select="@far"/></td></tr></xsl:for-each>
      </tbody>
    </table>
  </xsl:template>
</xsl:stylesheet>
