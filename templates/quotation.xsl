<?xml version="1.0" encoding="UTF-8"?>
<!-- The quotation sheet: what the work and its parts come to by the user's own rates and prices, and what is not in it. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="quotation">
    <xsl:for-each select="papers/quotation">
      <div class="quotation">
        <xsl:variable name="amount" select="key('label', 'quote-amount')"/>
        <xsl:variable name="rate" select="key('label', 'quote-rate')"/>
        <xsl:variable name="currency" select="@currency"/>
        <table class="cards">
          <thead><tr><th scope="col"><xsl:value-of select="key('label', 'quote-what')"/></th><th scope="col"><xsl:value-of select="$amount"/></th><th scope="col" class="n"><xsl:value-of select="$rate"/></th><th scope="col" class="n"><xsl:value-of select="$currency"/></th></tr></thead>
          <tbody>
            <xsl:for-each select="cost">
              <tr><th scope="row"><xsl:value-of select="."/></th><td data-label="{$amount}" class="nowrap"><xsl:value-of select="@amount"/></td><td data-label="{$rate}" class="n"><xsl:value-of select="@each"/></td><td data-label="{$currency}" class="n"><xsl:value-of select="@total"/></td></tr>
            </xsl:for-each>
            <tr class="taken"><th scope="row"><xsl:value-of select="key('label', 'quote-total')"/></th><td></td><td></td><td data-label="{$currency}" class="n"><xsl:value-of select="@total"/></td></tr>
          </tbody>
        </table>
      </div>
      <xsl:if test="left-out">
        <section>
          <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'quote-left-out')"/></xsl:element>
          <ul><xsl:for-each select="left-out"><li><xsl:value-of select="."/></li></xsl:for-each></ul>
        </section>
      </xsl:if>
      <p class="small"><xsl:value-of select="key('label', 'quote-estimate')"/></p>
    </xsl:for-each>
  </xsl:template>
</xsl:stylesheet>
