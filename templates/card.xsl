<?xml version="1.0" encoding="UTF-8"?>
<!-- The card: what is true of every job, on one side of A4, to be kept. It is the same for every route. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="card">
    <header class="card-head"><xsl:element name="{$h1}"><xsl:value-of select="key('label', 'every-job')"/></xsl:element></header>
    <p class="card-stop"><strong><xsl:value-of select="key('label', 'stop-and-ring')"/></strong><xsl:text> </xsl:text><xsl:value-of select="key('label', 'when-different')"/></p>
    <div class="card-groups">
      <xsl:for-each select="papers/card/group">
        <section>
          <xsl:element name="{$h2}"><xsl:value-of select="@name"/></xsl:element>
          <ul><xsl:for-each select="line"><li><xsl:value-of select="."/></li></xsl:for-each></ul>
        </section>
      </xsl:for-each>
    </div>
    <div class="blanks card-blanks">
      <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'card-site'), '|', key('label', 'card-main-switch'), '|', key('label', 'card-leader'), '|', key('label', 'card-hospital'))"/></xsl:call-template>
    </div>
  </xsl:template>
</xsl:stylesheet>
