<?xml version="1.0" encoding="UTF-8"?>
<!-- The test sheet: an aid beside the meter, never a certificate. Expected, limit and measured side by side. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="test">
    <p class="strong notice"><xsl:value-of select="key('label', 'no-certificate')"/></p>
    <div class="blanks who">
      <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'tested-by'), '|', key('label', 'test-date'), '|', key('label', 'meter'), '|', key('label', 'leads-nulled'), '|', key('label', 'air'))"/></xsl:call-template>
    </div>
    <xsl:apply-templates select="papers/tests" mode="test"/>
    <!-- of several runs once for all, by the name of the test -->
    <xsl:if test="count(papers/tests) &gt; 1">
      <div class="bad">
        <p><strong><xsl:value-of select="key('label', 'if-bad')"/></strong></p>
        <ul><xsl:for-each select="papers/tests/test[count(. | key('bad', concat(@name, '|', .))[1]) = 1]"><xsl:call-template name="bad"><xsl:with-param name="test" select="concat(@name, ':')"/></xsl:call-template></xsl:for-each></ul>
      </div>
    </xsl:if>
    <p class="small"><xsl:value-of select="key('label', 'test-sources')"/></p>
  </xsl:template>

  <xsl:template match="tests" mode="test">
    <section class="tests">
      <xsl:element name="{$h2}">
        <xsl:value-of select="@run"/>
        <xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if>
        <xsl:text>, </xsl:text><xsl:value-of select="@cable"/><xsl:text>, </xsl:text><xsl:value-of select="@device"/>
      </xsl:element>
      <xsl:if test="@note"><p class="strong"><xsl:value-of select="@note"/></p></xsl:if>
      <xsl:variable name="expect" select="key('label', 'expected')"/>
      <xsl:variable name="limit" select="key('label', 'limit')"/>
      <xsl:variable name="measured" select="key('label', 'measured')"/>
      <table class="readings cards">
        <thead><tr><th scope="col"><xsl:value-of select="key('label', 'test')"/></th><th scope="col"><xsl:value-of select="$expect"/></th><th scope="col"><xsl:value-of select="$limit"/></th><th scope="col"><xsl:value-of select="$measured"/></th></tr></thead>
        <tbody>
          <tr class="trade"><th colspan="4" scope="rowgroup"><xsl:value-of select="key('label', 'dead-tests')"/></th></tr>
          <xsl:for-each select="test[@group = 'dead']"><xsl:call-template name="test-row"><xsl:with-param name="expect" select="$expect"/><xsl:with-param name="limit" select="$limit"/><xsl:with-param name="measured" select="$measured"/></xsl:call-template></xsl:for-each>
        </tbody>
        <tbody>
          <tr class="trade"><th colspan="4" scope="rowgroup"><xsl:value-of select="key('label', 'live-tests')"/></th></tr>
          <xsl:for-each select="test[@group = 'live']"><xsl:call-template name="test-row"><xsl:with-param name="expect" select="$expect"/><xsl:with-param name="limit" select="$limit"/><xsl:with-param name="measured" select="$measured"/></xsl:call-template></xsl:for-each>
        </tbody>
      </table>
      <div class="beside">
      <xsl:if test="core"><xsl:call-template name="cores"/></xsl:if>
      <xsl:if test="at">
        <table class="by-temperature">
          <caption><xsl:value-of select="key('label', 'by-temperature')"/></caption>
          <thead><tr><th scope="col" class="n"><xsl:value-of select="key('label', 'cable-degc')"/></th><xsl:for-each select="at"><th scope="col" class="n"><xsl:value-of select="@cable"/></th></xsl:for-each></tr></thead>
          <tbody>
            <tr><th scope="row">R1</th><xsl:for-each select="at"><td class="n"><xsl:value-of select="@r1"/></td></xsl:for-each></tr>
            <tr><th scope="row">R2</th><xsl:for-each select="at"><td class="n"><xsl:value-of select="@r2"/></td></xsl:for-each></tr>
            <tr><th scope="row">R1 + R2</th><xsl:for-each select="at"><td class="n strong"><xsl:value-of select="@r1r2"/></td></xsl:for-each></tr>
          </tbody>
        </table>
      </xsl:if>
      </div>
      <xsl:if test="count(/plan/papers/tests) = 1">
        <div class="bad">
          <p><strong><xsl:value-of select="key('label', 'if-bad')"/></strong></p>
          <ul><xsl:for-each select="test"><xsl:call-template name="bad"><xsl:with-param name="test" select="@number"/></xsl:call-template></xsl:for-each></ul>
        </div>
      </xsl:if>
    </section>
  </xsl:template>

  <xsl:template name="bad">
    <xsl:param name="test"/>
    <li><strong><xsl:value-of select="$test"/></strong><xsl:text> </xsl:text><xsl:value-of select="."/><span class="source"><xsl:text> </xsl:text><xsl:choose>
      <!-- the sources' line says it on paper -->
      <xsl:when test="starts-with(@source, 'BS 7671 ')"><span class="on-screen">BS 7671 </span><xsl:value-of select="substring-after(@source, 'BS 7671 ')"/></xsl:when>
      <xsl:otherwise><xsl:value-of select="@source"/></xsl:otherwise>
    </xsl:choose></span></li>
  </xsl:template>

  <xsl:template name="test-row">
    <xsl:param name="expect"/><xsl:param name="limit"/><xsl:param name="measured"/>
    <tr>
      <th scope="row"><xsl:value-of select="@number"/><xsl:text> </xsl:text><xsl:value-of select="@name"/><span class="between"><xsl:text> </xsl:text><xsl:value-of select="@between"/></span></th>
      <td data-label="{$expect}"><xsl:value-of select="@expect"/></td>
      <td data-label="{$limit}"><xsl:value-of select="@limit"/></td>
      <td data-label="{$measured}"><div class="measured"><xsl:call-template name="blanks"><xsl:with-param name="labels" select="@blanks"/></xsl:call-template></div></td>
    </tr>
  </xsl:template>
</xsl:stylesheet>
