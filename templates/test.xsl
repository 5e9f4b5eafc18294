<?xml version="1.0" encoding="UTF-8"?>
<!-- The test sheet: an aid beside the meter, never a certificate. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="test">
    <p class="strong notice">An aid for whoever holds the meter. It is no certificate: readings go onto the installation certificate and its schedules, signed by the person who tested.</p>
    <section class="meter">
      <xsl:element name="{$h2}">Who and with what</xsl:element>
      <div class="blanks">
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="'Tested by|Date|Meter, serial number|Leads nulled|Air °C'"/></xsl:call-template>
      </div>
    </section>
    <xsl:apply-templates select="papers/tests" mode="test"/>
    <p class="small">Order of the tests and clause numbers: BS 7671 part 6 (clause numbers from memory). Where a sentence on a bad reading names no source it is common practice.</p>
  </xsl:template>

  <xsl:template match="tests" mode="test">
    <section class="tests">
      <xsl:element name="{$h2}">
        <xsl:value-of select="@run"/>
        <xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if>
      </xsl:element>
      <p><xsl:value-of select="@cable"/><xsl:text>, </xsl:text><xsl:value-of select="@device"/></p>
      <xsl:if test="@note"><p class="strong"><xsl:value-of select="@note"/></p></xsl:if>
      <xsl:element name="{$h3}">Dead, in this order</xsl:element>
      <ol class="test-list">
        <xsl:apply-templates select="test[@group = 'dead']" mode="test"/>
      </ol>
      <xsl:if test="core"><xsl:call-template name="cores"/></xsl:if>
      <xsl:if test="at">
        <div class="scroll" role="region" tabindex="0" aria-label="Expected resistance of {@run} by temperature">
        <table class="by-temperature">
          <caption>Expected resistance by the temperature of the cable, Ω</caption>
          <thead><tr><th scope="col" class="n">Cable, °C</th><xsl:for-each select="at"><th scope="col" class="n"><xsl:value-of select="@cable"/></th></xsl:for-each></tr></thead>
          <tbody>
            <tr><th scope="row">R1</th><xsl:for-each select="at"><td class="n"><xsl:value-of select="@r1"/></td></xsl:for-each></tr>
            <tr><th scope="row">R2</th><xsl:for-each select="at"><td class="n"><xsl:value-of select="@r2"/></td></xsl:for-each></tr>
            <tr><th scope="row">R1 + R2</th><xsl:for-each select="at"><td class="n strong"><xsl:value-of select="@r1r2"/></td></xsl:for-each></tr>
          </tbody>
        </table>
        </div>
      </xsl:if>
      <xsl:element name="{$h3}">Live, once every dead test is passed</xsl:element>
      <ol class="test-list">
        <xsl:apply-templates select="test[@group = 'live']" mode="test"/>
      </ol>
    </section>
  </xsl:template>

  <xsl:template match="test" mode="test">
    <li class="test" value="{@number}">
      <div class="what">
        <p><strong><xsl:value-of select="@number"/><xsl:text>. </xsl:text><xsl:value-of select="@name"/></strong></p>
        <p class="small"><xsl:value-of select="@between"/></p>
        <p class="source"><xsl:value-of select="@source"/></p>
      </div>
      <dl class="values">
        <div><dt>Expect</dt><dd><xsl:value-of select="@expect"/></dd></div>
        <div><dt>Limit</dt><dd><xsl:value-of select="@limit"/></dd></div>
      </dl>
      <div class="reading"><xsl:call-template name="blanks"><xsl:with-param name="labels" select="@blanks"/></xsl:call-template></div>
      <p class="bad"><xsl:value-of select="."/></p>
    </li>
  </xsl:template>
</xsl:stylesheet>
