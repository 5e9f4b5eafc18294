<?xml version="1.0" encoding="UTF-8"?>
<!-- The design sheet: what was put in, what came out, and where each figure is from. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="design">
    <section class="inputs">
      <xsl:element name="{$h2}">What the design starts from</xsl:element>
      <dl class="facts">
        <div><dt>Rules</dt><dd><xsl:value-of select="@rules-text"/></dd></div>
        <div><dt>Supply</dt><dd>
          <xsl:value-of select="supply/@system"/><xsl:text>, </xsl:text><xsl:value-of select="supply/@phases"/>
          <xsl:text>-phase, </xsl:text><xsl:value-of select="supply/@voltage-V"/><xsl:text> V</xsl:text>
          <xsl:if test="supply/@loop-impedance-ohm"><xsl:text>, Ze </xsl:text><xsl:value-of select="supply/@loop-impedance-ohm"/><xsl:text> Ω</xsl:text></xsl:if>
          <xsl:if test="supply/@fault-current-A"><xsl:text>, fault current </xsl:text><xsl:value-of select="supply/@fault-current-A"/><xsl:text> A</xsl:text></xsl:if>
          <xsl:if test="supply/@drop-before-percent"><xsl:text>, dropped before </xsl:text><xsl:value-of select="supply/@drop-before-percent"/><xsl:text> %</xsl:text></xsl:if>
        </dd></div>
        <div><dt>Temperatures</dt><dd>
          <xsl:text>air </xsl:text><xsl:value-of select="conditions/@air-degC"/><xsl:text> °C, ground </xsl:text><xsl:value-of select="conditions/@ground-degC"/>
          <xsl:text> °C, terminals </xsl:text><xsl:value-of select="conditions/@terminals-degC"/><xsl:text> °C</xsl:text>
        </dd></div>
        <div><dt>Soil</dt><dd><xsl:value-of select="conditions/@soil-thermal-K-m-per-W"/><xsl:text> K·m/W</xsl:text>
          <xsl:if test="conditions/@soil-electrical-ohm-m"><xsl:text>, </xsl:text><xsl:value-of select="conditions/@soil-electrical-ohm-m"/><xsl:text> Ω·m</xsl:text></xsl:if>
        </dd></div>
        <div><dt>Far end</dt><dd><xsl:value-of select="papers/said/sentence[@about = 'far-end']"/></dd></div>
        <xsl:if test="electrode"><div><dt>Electrode</dt><dd><xsl:value-of select="electrode"/></dd></div></xsl:if>
      </dl>
    </section>

    <xsl:if test="not-checked-list/not-checked">
      <section class="open">
        <xsl:element name="{$h2}">Not checked here: check these another way</xsl:element>
        <ul><xsl:for-each select="not-checked-list/not-checked"><li><xsl:value-of select="."/></li></xsl:for-each></ul>
      </section>
    </xsl:if>

    <xsl:if test="assumptions/assumption">
      <section class="assumed">
        <xsl:element name="{$h2}">Taken for granted: confirm on site</xsl:element>
        <ul class="ticks">
          <xsl:for-each select="assumptions/assumption">
            <li><xsl:call-template name="box"/><span><xsl:value-of select="."/><xsl:text> </xsl:text><span class="small key">(<xsl:value-of select="@where"/>)</span></span></li>
          </xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <xsl:apply-templates select="papers/sheet" mode="design"/>

    <section class="working">
      <xsl:element name="{$h2}">Working, step by step</xsl:element>
      <xsl:for-each select="run[working]">
        <xsl:element name="{$h3}"><xsl:value-of select="@name"/></xsl:element>
        <xsl:apply-templates select="working" mode="design"/>
      </xsl:for-each>
    </section>
  </xsl:template>

  <xsl:template match="sheet" mode="design">
    <section class="sheet-run">
      <xsl:element name="{$h2}">
        <xsl:value-of select="@run"/>
        <xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if>
      </xsl:element>
      <xsl:if test="fact">
      <dl class="facts">
        <xsl:for-each select="fact"><div><dt><xsl:value-of select="@name"/></dt><dd><xsl:value-of select="."/></dd></div></xsl:for-each>
      </dl>
      </xsl:if>
      <xsl:if test="check"><xsl:call-template name="checks-table"/></xsl:if>
      <xsl:if test="row"><xsl:call-template name="ratings-table"/></xsl:if>
      <xsl:if test="size"><xsl:call-template name="sizes-table"/></xsl:if>
      <xsl:apply-templates select="chart" mode="design"/>
    </section>
  </xsl:template>

  <xsl:template name="checks-table">
    <div class="scroll" role="region" tabindex="0" aria-label="Checks of {@run}">
      <table class="checks">
        <caption>Checks</caption>
        <thead><tr><th scope="col">Check</th><th scope="col">Result</th><th scope="col">Value</th><th scope="col">Limit</th><th scope="col">Margin</th><th scope="col">In words, and its source</th></tr></thead>
        <tbody>
          <xsl:for-each select="check">
            <tr class="{translate(@result, ' ', '-')}">
              <th scope="row"><xsl:value-of select="@title"/></th>
              <td class="result"><xsl:value-of select="@result"/></td>
              <td class="nowrap"><xsl:value-of select="@value"/></td>
              <td class="nowrap"><xsl:value-of select="@limit"/></td>
              <td class="nowrap"><xsl:value-of select="@margin"/></td>
              <td><xsl:value-of select="."/>
                <xsl:if test="@assumes"><xsl:text> </xsl:text><em><xsl:value-of select="@assumes"/></em></xsl:if>
                <xsl:text> </xsl:text><span class="source"><xsl:value-of select="@source"/></span></td>
            </tr>
          </xsl:for-each>
        </tbody>
      </table>
    </div>
  </xsl:template>

  <xsl:template name="ratings-table">
    <div class="scroll" role="region" tabindex="0" aria-label="What {@run} carries, stretch by stretch">
      <table class="ratings">
        <caption>What it carries, stretch by stretch. The governing stretch is marked.</caption>
        <thead><tr>
          <th scope="col">Stretch</th><th scope="col">Method</th><th scope="col" class="n">Table gives, A</th>
          <th scope="col">Factors, and why</th><th scope="col" class="n">Product</th><th scope="col" class="n">Carries, A</th>
          <th scope="col" class="n">Over device, A</th><th scope="col" class="n">Conductor, °C</th>
          <th scope="col" class="n">Length, m</th><th scope="col" class="n">Drop, V</th><th scope="col" class="n">Part, %</th>
        </tr></thead>
        <tbody>
          <xsl:for-each select="row">
            <tr>
              <xsl:if test="@governs"><xsl:attribute name="class">governs</xsl:attribute></xsl:if>
              <th scope="row"><xsl:value-of select="@number"/><xsl:text> </xsl:text><xsl:value-of select="@name"/>
                <span class="small"><xsl:text> </xsl:text><xsl:value-of select="@way"/></span>
                <xsl:if test="@governs"><span class="flag"> governs</span></xsl:if></th>
              <td><xsl:value-of select="@method"/><span class="small"><xsl:text> Table </xsl:text><xsl:value-of select="@table"/></span></td>
              <td class="n"><xsl:value-of select="@tabulated"/></td>
              <td class="why">
                <xsl:for-each select="factor">
                  <span class="factor"><strong><xsl:value-of select="@symbol"/><xsl:text> </xsl:text><xsl:value-of select="@value"/></strong>
                  <xsl:text> </xsl:text><xsl:value-of select="."/><span class="source"><xsl:text> </xsl:text><xsl:value-of select="@source"/></span></span>
                </xsl:for-each>
                <xsl:if test="@warning"><span class="factor"><strong>Mind</strong><xsl:text> </xsl:text><xsl:value-of select="@warning"/></span></xsl:if>
              </td>
              <td class="n"><xsl:value-of select="@factor"/></td>
              <td class="n strong"><xsl:value-of select="@capacity"/></td>
              <td class="n"><xsl:value-of select="@margin"/></td>
              <td class="n"><xsl:value-of select="@conductor"/></td>
              <td class="n"><xsl:value-of select="@length"/></td>
              <td class="n"><xsl:value-of select="@drop"/></td>
              <td class="n"><xsl:value-of select="@share"/></td>
            </tr>
          </xsl:for-each>
        </tbody>
      </table>
    </div>
    <xsl:if test="row/@because">
      <ul class="small reasons">
        <xsl:for-each select="row[@because]"><li><strong><xsl:value-of select="@number"/><xsl:text> </xsl:text><xsl:value-of select="@name"/></strong><xsl:text>: </xsl:text><xsl:value-of select="@because"/></li></xsl:for-each>
      </ul>
    </xsl:if>
  </xsl:template>

  <xsl:template name="sizes-table">
    <div class="scroll" role="region" tabindex="0" aria-label="Sizes tried for {@run}">
      <table class="sizes">
        <caption>Every size tried, with this protective conductor</caption>
        <thead><tr><th scope="col" class="n">Size, mm²</th><th scope="col">Result</th><th scope="col" class="n">Carries, A</th>
          <th scope="col" class="n">Drop, %</th><th scope="col" class="n">Zs, Ω</th><th scope="col">Gland</th>
          <th scope="col" class="n">kg/km</th><th scope="col">Why it fails or is open</th></tr></thead>
        <tbody>
          <xsl:for-each select="size">
            <tr class="{@result}">
              <th scope="row" class="n"><xsl:value-of select="@size"/></th>
              <td class="result"><xsl:value-of select="@result"/></td>
              <td class="n"><xsl:value-of select="@capacity"/></td>
              <td class="n"><xsl:value-of select="@drop"/></td>
              <td class="n"><xsl:value-of select="@zs"/></td>
              <td><xsl:value-of select="@gland"/></td>
              <td class="n"><xsl:value-of select="@weight"/></td>
              <td><xsl:value-of select="@why"/></td>
            </tr>
          </xsl:for-each>
        </tbody>
      </table>
    </div>
  </xsl:template>

  <!-- Every place is a finished number, in millimetres. -->
  <xsl:template match="chart" mode="design">
    <xsl:variable name="run" select="../@run"/>
    <div class="charts">
      <xsl:for-each select="panel">
        <figure class="chart">
          <figcaption><xsl:value-of select="@title"/></figcaption>
          <svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="{@title}; the figures stand in the table of sizes of {$run}" viewBox="0 0 {@width} {@height}">
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
    <xsl:variable name="run" select="../@name"/>
    <div class="worked">
      <p class="worked-name"><strong><xsl:value-of select="/plan/papers/sheet[@run = $run]/check[@id = $id]/@title"/></strong></p>
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
