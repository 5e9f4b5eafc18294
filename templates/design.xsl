<?xml version="1.0" encoding="UTF-8"?>
<!-- The design sheet: what decides, then every figure with its limit and where it is from. The working opens on a screen. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="design">
    <section class="decides">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'what-decides')"/></xsl:element>
      <xsl:for-each select="papers/sheet[nearest][not(@like)]">
        <ul>
          <xsl:for-each select="nearest"><li><xsl:if test="count(/plan/papers/sheet[nearest]) &gt; 1"><strong><xsl:for-each select=".. | key('like', ../@run)"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@run"/></xsl:for-each><xsl:text>: </xsl:text></strong></xsl:if><xsl:value-of select="."/></li></xsl:for-each>
        </ul>
      </xsl:for-each>
    </section>

    <xsl:if test="papers/open">
      <!-- on paper those that matter stand under the verdict and among the checks -->
      <section>
        <xsl:attribute name="class">open<xsl:if test="@verdict = 'open' and not(papers/open[@matters = 'no'])"> on-screen</xsl:if></xsl:attribute>
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'not-checked-here')"/></xsl:element>
        <ul>
          <xsl:for-each select="papers/open">
            <li><xsl:if test="/plan/@verdict = 'open' and @matters = 'yes'"><xsl:attribute name="class">on-screen</xsl:attribute></xsl:if><strong><xsl:value-of select="@title"/></strong><xsl:text> (</xsl:text><xsl:value-of select="@run"/><xsl:text>): </xsl:text><xsl:value-of select="."/>
              <xsl:if test="@settles"><xsl:text> </xsl:text><em><xsl:value-of select="key('label', 'settled-by')"/><xsl:text> </xsl:text><xsl:value-of select="@settles"/></em></xsl:if></li>
          </xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <section class="inputs">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'starts-from')"/></xsl:element>
      <dl class="facts">
        <xsl:for-each select="papers/given"><div><dt><xsl:value-of select="@name"/></dt><dd><xsl:value-of select="."/></dd></div></xsl:for-each>
        <div><dt><xsl:value-of select="key('label', 'far-end')"/></dt><dd><xsl:value-of select="papers/said/sentence[@about = 'far-end']"/></dd></div>
      </dl>
    </section>

    <xsl:apply-templates select="papers/sheet[not(@like)]" mode="design"/>

    <xsl:if test="papers/taken">
      <section class="assumed">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'assumed')"/></xsl:element>
        <ul class="ticks">
          <xsl:for-each select="papers/taken"><li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li></xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <xsl:if test="run[working] or papers/sheet/chart">
      <details class="working">
        <summary><xsl:value-of select="key('label', 'working')"/></summary>
        <xsl:apply-templates select="papers/sheet/chart" mode="design"/>
        <xsl:for-each select="run[working]">
          <xsl:element name="{$h3}"><xsl:value-of select="@name"/></xsl:element>
          <xsl:apply-templates select="working" mode="design"/>
        </xsl:for-each>
      </details>
    </xsl:if>
  </xsl:template>

  <xsl:template match="sheet" mode="design">
    <section class="sheet-run">
      <xsl:element name="{$h2}">
        <xsl:for-each select=". | key('like', @run)">
          <xsl:if test="position() &gt; 1">; </xsl:if>
          <xsl:value-of select="@run"/>
          <xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if>
        </xsl:for-each>
      </xsl:element>
      <xsl:if test="fact">
      <dl class="facts">
        <xsl:for-each select="fact"><div><xsl:if test="@on-screen"><xsl:attribute name="class">on-screen</xsl:attribute></xsl:if><dt><xsl:value-of select="@name"/></dt><dd><xsl:value-of select="."/></dd></div></xsl:for-each>
      </dl>
      </xsl:if>
      <xsl:if test="check"><xsl:call-template name="checks-table"/></xsl:if>
      <xsl:if test="row"><xsl:call-template name="ratings-table"/></xsl:if>
      <xsl:if test="size"><xsl:call-template name="sizes-table"/></xsl:if>
    </section>
  </xsl:template>

  <!-- Value, limit and margin side by side; where a rule decides and nothing is compared, the rule's words. -->
  <xsl:template name="checks-table">
    <xsl:variable name="result" select="key('label', 'result')"/>
    <xsl:variable name="value" select="key('label', 'value')"/>
    <xsl:variable name="limit" select="key('label', 'limit')"/>
    <xsl:variable name="margin" select="key('label', 'margin')"/>
    <xsl:variable name="source" select="key('label', 'source')"/>
    <table class="checks cards">
      <caption><xsl:value-of select="key('label', 'checks')"/><span class="on-paper"><xsl:text> </xsl:text><xsl:value-of select="key('label', 'clauses-of')"/></span></caption>
      <thead><tr><th scope="col"><xsl:value-of select="key('label', 'check')"/></th><th scope="col"><xsl:value-of select="$result"/></th><th scope="col"><xsl:value-of select="$value"/></th><th scope="col"><xsl:value-of select="$limit"/></th><th scope="col"><xsl:value-of select="$margin"/></th><th scope="col"><xsl:value-of select="$source"/></th></tr></thead>
      <tbody>
        <xsl:for-each select="check[@result != 'not due']">
          <tr class="{@result}">
            <th scope="row"><xsl:value-of select="@title"/></th>
            <td class="result" data-label="{$result}"><xsl:choose>
              <xsl:when test="@result = 'pass'"><xsl:value-of select="key('label', 'result-pass')"/></xsl:when>
              <xsl:when test="@result = 'fail'"><xsl:value-of select="key('label', 'result-fail')"/></xsl:when>
              <xsl:when test="@result = 'open'"><xsl:value-of select="key('label', 'result-open')"/></xsl:when>
              <xsl:otherwise><xsl:value-of select="key('label', 'result-unchecked')"/></xsl:otherwise>
            </xsl:choose></td>
            <xsl:choose>
              <xsl:when test="@value">
                <td data-label="{$value}"><xsl:value-of select="@value"/></td>
                <td data-label="{$limit}"><xsl:value-of select="@limit"/></td>
                <td class="left" data-label="{$margin}"><xsl:value-of select="@margin"/></td>
              </xsl:when>
              <xsl:otherwise><td colspan="3"><xsl:value-of select="."/></td></xsl:otherwise>
            </xsl:choose>
            <td class="source" data-label="{$source}"><xsl:choose>
              <!-- the caption says it on paper -->
              <xsl:when test="starts-with(@source, 'BS 7671 ')"><span class="on-screen">BS 7671 </span><xsl:value-of select="substring-after(@source, 'BS 7671 ')"/></xsl:when>
              <xsl:otherwise><xsl:value-of select="@source"/></xsl:otherwise>
            </xsl:choose><xsl:if test="@assumes"><xsl:text> </xsl:text><em><xsl:value-of select="@assumes"/></em></xsl:if></td>
          </tr>
        </xsl:for-each>
      </tbody>
    </table>
    <xsl:if test="check[@result = 'not due']">
      <p class="small"><strong><xsl:value-of select="key('label', 'not-needed')"/><xsl:text>: </xsl:text></strong><xsl:for-each select="check[@result = 'not due']"><xsl:if test="position() &gt; 1">; </xsl:if><xsl:value-of select="@title"/></xsl:for-each><xsl:text>.</xsl:text></p>
    </xsl:if>
  </xsl:template>

  <xsl:template name="ratings-table">
    <xsl:variable name="method" select="key('label', 'method')"/>
    <xsl:variable name="gives" select="key('label', 'table-gives')"/>
    <xsl:variable name="factors" select="key('label', 'factors')"/>
    <xsl:variable name="carries" select="key('label', 'carries')"/>
    <xsl:variable name="over" select="key('label', 'over-device')"/>
    <xsl:variable name="conductor" select="key('label', 'conductor')"/>
    <xsl:variable name="length" select="key('label', 'length-m')"/>
    <xsl:variable name="drop" select="key('label', 'drop-v')"/>
    <xsl:variable name="share" select="key('label', 'share')"/>
    <table class="ratings cards">
      <caption><xsl:value-of select="key('label', 'carries-by-stretch')"/></caption>
      <thead><tr>
        <th scope="col"><xsl:value-of select="key('label', 'stretch')"/></th><th scope="col"><xsl:value-of select="$method"/></th><th scope="col" class="n"><xsl:value-of select="$gives"/></th>
        <th scope="col"><xsl:value-of select="$factors"/></th><th scope="col" class="n"><xsl:value-of select="$carries"/></th>
        <th scope="col" class="n"><xsl:value-of select="$over"/></th><th scope="col" class="n"><xsl:value-of select="$conductor"/></th>
        <th scope="col" class="n"><xsl:value-of select="$length"/></th><th scope="col" class="n"><xsl:value-of select="$drop"/></th><th scope="col" class="n"><xsl:value-of select="$share"/></th>
      </tr></thead>
      <tbody>
        <xsl:for-each select="row">
          <tr>
            <xsl:if test="@governs"><xsl:attribute name="class">governs</xsl:attribute></xsl:if>
            <th scope="row"><xsl:value-of select="@number"/><xsl:text> </xsl:text><xsl:value-of select="@name"/>
              <xsl:if test="@governs"><xsl:text> </xsl:text><span class="flag"><xsl:value-of select="key('label', 'lowest')"/></span></xsl:if></th>
            <td data-label="{$method}"><xsl:value-of select="@method"/><xsl:text>, </xsl:text><xsl:value-of select="@table"/></td>
            <td class="n" data-label="{$gives}"><xsl:value-of select="@tabulated"/></td>
            <td class="why" data-label="{$factors}">
              <xsl:for-each select="factor[number(@value) != 1]">
                <span class="factor"><strong><xsl:value-of select="@symbol"/><xsl:text> </xsl:text><xsl:value-of select="@value"/></strong>
                <xsl:text> </xsl:text><xsl:value-of select="."/></span>
              </xsl:for-each>
              <xsl:if test="factor[number(@value) = 1]"><span class="source on-screen"><xsl:for-each select="factor[number(@value) = 1]"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@symbol"/></xsl:for-each><xsl:text> 1</xsl:text></span></xsl:if>
              <xsl:if test="@warning"><span class="factor"><strong><xsl:value-of select="key('label', 'mind')"/></strong><xsl:text> </xsl:text><xsl:value-of select="@warning"/></span></xsl:if>
            </td>
            <td class="n strong" data-label="{$carries}"><xsl:value-of select="@capacity"/></td>
            <td class="n" data-label="{$over}"><xsl:value-of select="@margin"/></td>
            <td class="n" data-label="{$conductor}"><xsl:value-of select="@conductor"/></td>
            <td class="n" data-label="{$length}"><xsl:value-of select="@length"/></td>
            <td class="n" data-label="{$drop}"><xsl:value-of select="@drop"/></td>
            <td class="n" data-label="{$share}"><xsl:value-of select="@share"/></td>
          </tr>
        </xsl:for-each>
      </tbody>
    </table>
    <!-- each source once, with what it gives -->
    <p class="small factor-sources">
      <xsl:for-each select="row/factor[@source][count(. | key('factor-source', concat(generate-id(../..), @symbol, '|', @source))[1]) = 1]">
        <span><strong><xsl:value-of select="@symbol"/></strong><xsl:text> </xsl:text><xsl:value-of select="@source"/><xsl:text>. </xsl:text></span>
      </xsl:for-each>
    </p>
    <!-- each reason once, with the stretches that it holds for -->
    <xsl:if test="row/@because">
      <ul class="small reasons">
        <xsl:for-each select="row[@because][count(. | key('reason', concat(generate-id(..), @because))[1]) = 1]">
          <xsl:variable name="because" select="@because"/>
          <li><strong><xsl:for-each select="key('reason', concat(generate-id(..), @because))"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@number"/></xsl:for-each></strong><xsl:text>: </xsl:text><xsl:value-of select="$because"/></li>
        </xsl:for-each>
      </ul>
    </xsl:if>
  </xsl:template>

  <xsl:template name="sizes-table">
    <xsl:variable name="result" select="key('label', 'result')"/>
    <xsl:variable name="carries" select="key('label', 'carries')"/>
    <xsl:variable name="drop" select="key('label', 'drop-percent')"/>
    <xsl:variable name="zs" select="key('label', 'zs')"/>
    <xsl:variable name="why" select="key('label', 'why-not')"/>
    <table class="sizes cards">
      <caption><xsl:value-of select="key('label', 'sizes-tried')"/><xsl:if test="size[@result = 'taken']"><span class="on-paper"><xsl:value-of select="key('label', 'sizes-on-paper')"/></span></xsl:if></caption>
      <thead><tr><th scope="col"><xsl:value-of select="key('label', 'size')"/></th><th scope="col"><xsl:value-of select="$result"/></th><th scope="col" class="n"><xsl:value-of select="$carries"/></th>
        <th scope="col" class="n"><xsl:value-of select="$drop"/></th><th scope="col" class="n"><xsl:value-of select="$zs"/></th><th scope="col"><xsl:value-of select="$why"/></th></tr></thead>
      <tbody>
        <xsl:for-each select="size">
          <!-- on paper the size taken with its neighbours; all of them on a screen -->
          <tr class="{@result}">
            <xsl:if test="../size[@result = 'taken'] and not(@result = 'taken' or following-sibling::size[1][@result = 'taken'] or preceding-sibling::size[1][@result = 'taken'])"><xsl:attribute name="class"><xsl:value-of select="@result"/> further</xsl:attribute></xsl:if>
            <th scope="row"><xsl:value-of select="@size"/></th>
            <td class="result" data-label="{$result}"><xsl:choose>
              <xsl:when test="@result = 'taken'"><xsl:value-of select="key('label', 'result-taken')"/></xsl:when>
              <xsl:when test="@result = 'pass'"><xsl:value-of select="key('label', 'result-pass')"/></xsl:when>
              <xsl:when test="@result = 'open'"><xsl:value-of select="key('label', 'result-open')"/></xsl:when>
              <xsl:otherwise><xsl:value-of select="key('label', 'result-fail')"/></xsl:otherwise>
            </xsl:choose></td>
            <td class="n" data-label="{$carries}"><xsl:value-of select="@capacity"/></td>
            <td class="n" data-label="{$drop}"><xsl:value-of select="@drop"/></td>
            <td class="n" data-label="{$zs}"><xsl:value-of select="@zs"/></td>
            <td data-label="{$why}"><xsl:value-of select="@why"/></td>
          </tr>
        </xsl:for-each>
      </tbody>
    </table>
  </xsl:template>

  <!-- Every place is a finished number, in millimetres. -->
  <xsl:template match="chart" mode="design">
    <xsl:variable name="run" select="../@run"/>
    <div class="charts">
      <xsl:for-each select="panel">
        <figure class="chart scroll">
          <figcaption><xsl:value-of select="@title"/></figcaption>
          <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{@title}, {$run}" viewBox="0 0 {@width} {@height}">
            <xsl:for-each select="bar"><rect class="bar {@kind}" x="{@x}" y="{@y}" width="{@width}" height="{@height}"/></xsl:for-each>
            <line class="base" x1="{@left}" x2="{@right}" y1="{@base}" y2="{@base}"/>
            <line class="limit" x1="{@left}" x2="{@right}" y1="{@limit}" y2="{@limit}"/>
            <xsl:for-each select="label"><text class="{@kind}" x="{@x}" y="{@y}"><xsl:value-of select="."/></text></xsl:for-each>
          </svg>
        </figure>
      </xsl:for-each>
    </div>
  </xsl:template>

  <xsl:template match="working" mode="design">
    <xsl:variable name="id" select="@check"/>
    <xsl:variable name="check" select="/plan/papers/sheet[@run = current()/../@name]/check[@id = $id]"/>
    <div class="worked">
      <p class="worked-name"><strong><xsl:value-of select="$check/@title"/></strong><xsl:text>: </xsl:text><xsl:value-of select="$check"/></p>
      <ol>
        <xsl:for-each select="step">
          <li>
            <xsl:value-of select="@what"/>
            <xsl:if test="@formula"><xsl:text>: </xsl:text><span class="formula"><xsl:value-of select="@formula"/></span></xsl:if>
            <xsl:if test="@numbers"><xsl:text> = </xsl:text><span class="formula"><xsl:value-of select="@numbers"/></span></xsl:if>
            <xsl:if test="@result"><xsl:text> = </xsl:text><strong><xsl:value-of select="@result"/></strong></xsl:if>
            <xsl:if test="@source"><xsl:text> </xsl:text><span class="source"><xsl:value-of select="@source"/></span></xsl:if>
          </li>
        </xsl:for-each>
      </ol>
    </div>
  </xsl:template>
</xsl:stylesheet>
