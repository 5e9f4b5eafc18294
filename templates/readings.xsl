<?xml version="1.0" encoding="UTF-8"?>
<!-- The readings of a built job beside what the plan expects, in the order of a schedule of test results, to copy from. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="readings">
    <p class="strong notice"><xsl:value-of select="key('label', 'readings-no-certificate')"/></p>
    <xsl:apply-templates select="papers/read" mode="readings"/>
    <p class="small"><xsl:value-of select="key('label', 'readings-how-held')"/></p>
  </xsl:template>

  <!-- In place of the plan's own verdict, which stands in it: a plan that passes says nothing for a reading that does not. -->
  <xsl:template name="readings-verdict">
    <xsl:variable name="outcome" select="/plan/papers/readings-outcome"/>
    <p class="verdict {translate($outcome/@verdict, 'AEFILNOPS', 'aefilnops')}"><strong><xsl:value-of select="$outcome/@verdict"/></strong><span><xsl:value-of select="$outcome"/></span></p>
  </xsl:template>

  <xsl:template match="read" mode="readings">
    <section class="tests">
      <xsl:element name="{$h2}">
        <xsl:value-of select="@run"/>
        <xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if>
        <xsl:text>, </xsl:text><xsl:value-of select="@cable"/><xsl:text>, </xsl:text><xsl:value-of select="@device"/>
      </xsl:element>
      <xsl:if test="@instrument"><dl class="job-facts">
        <div><dt><xsl:value-of select="key('label', 'meter')"/></dt><dd><xsl:value-of select="@instrument"/></dd></div>
      </dl></xsl:if>
      <p><xsl:value-of select="@taken"/></p>
      <xsl:if test="@note"><p class="strong"><xsl:value-of select="@note"/></p></xsl:if>
      <xsl:variable name="measured" select="key('label', 'measured')"/>
      <xsl:variable name="expect" select="key('label', 'expected')"/>
      <xsl:variable name="limit" select="key('label', 'limit')"/>
      <xsl:variable name="outcome" select="key('label', 'reading-outcome')"/>
      <table class="cards">
        <thead><tr><th scope="col"><xsl:value-of select="key('label', 'reading')"/></th><th scope="col"><xsl:value-of select="$measured"/></th><th scope="col"><xsl:value-of select="$expect"/></th><th scope="col"><xsl:value-of select="$limit"/></th><th scope="col"><xsl:value-of select="$outcome"/></th></tr></thead>
        <tbody>
          <xsl:for-each select="reading">
            <tr>
              <th scope="row"><xsl:value-of select="@name"/></th>
              <td data-label="{$measured}" class="strong"><xsl:value-of select="@value"/></td>
              <td data-label="{$expect}"><xsl:value-of select="@expected"/></td>
              <td data-label="{$limit}"><xsl:value-of select="@limit"/></td>
              <td data-label="{$outcome}">
                <xsl:choose>
                  <xsl:when test="@state = 'beyond-limit' or @state = 'far-off'"><strong><xsl:value-of select="@fit"/></strong></xsl:when>
                  <xsl:otherwise><xsl:value-of select="@fit"/></xsl:otherwise>
                </xsl:choose>
                <xsl:if test="string(.)"><xsl:text>: </xsl:text><span class="between"><xsl:value-of select="."/></span></xsl:if>
              </td>
            </tr>
          </xsl:for-each>
        </tbody>
      </table>
    </section>
  </xsl:template>
</xsl:stylesheet>
