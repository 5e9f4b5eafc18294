<?xml version="1.0" encoding="UTF-8"?>
<!-- The as-laid sheet, for the owner and for whoever digs there next: where the cable lies, how deep, and what was found. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="as-laid">
    <p class="strong notice"><xsl:value-of select="key('label', 'laid-dig-with-care')"/></p>
    <dl class="job-facts">
      <div><dt><xsl:value-of select="key('label', 'laid-by')"/></dt><dd><xsl:choose><xsl:when test="papers/as-laid/@by"><xsl:value-of select="papers/as-laid/@by"/></xsl:when><xsl:otherwise><xsl:call-template name="blank"><xsl:with-param name="label" select="''"/></xsl:call-template></xsl:otherwise></xsl:choose></dd></div>
      <div><dt><xsl:value-of select="key('label', 'laid-on')"/></dt><dd><xsl:choose><xsl:when test="papers/as-laid/@date"><xsl:value-of select="papers/as-laid/@date"/></xsl:when><xsl:otherwise><xsl:call-template name="blank"><xsl:with-param name="label" select="''"/></xsl:call-template></xsl:otherwise></xsl:choose></dd></div>
    </dl>
    <ul><xsl:for-each select="papers/tests"><li><strong><xsl:value-of select="@run"/></strong><xsl:if test="@serves"><xsl:text>: </xsl:text><xsl:value-of select="@serves"/></xsl:if><xsl:text>, </xsl:text><xsl:value-of select="@cable"/><xsl:text>, </xsl:text><xsl:value-of select="@device"/></li></xsl:for-each></ul>
    <section class="laid">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'laid-stretches')"/></xsl:element>
      <xsl:variable name="way" select="key('label', 'laid-way')"/>
      <xsl:variable name="length" select="key('label', 'laid-length')"/>
      <xsl:variable name="depth" select="key('label', 'laid-depth')"/>
      <xsl:variable name="marks" select="key('label', 'laid-metre-marks')"/>
      <xsl:variable name="found" select="key('label', 'laid-found')"/>
      <table class="cards">
        <thead><tr><th scope="col"><xsl:value-of select="key('label', 'stretch')"/></th><th scope="col"><xsl:value-of select="$way"/></th><th scope="col"><xsl:value-of select="$length"/></th><th scope="col"><xsl:value-of select="$depth"/></th><th scope="col"><xsl:value-of select="$marks"/></th><th scope="col"><xsl:value-of select="$found"/></th></tr></thead>
        <tbody>
          <xsl:for-each select="papers/as-laid/stretch">
            <tr>
              <th scope="row"><xsl:value-of select="@number"/><xsl:text> </xsl:text><xsl:value-of select="@name"/></th>
              <td data-label="{$way}"><xsl:value-of select="@way"/></td>
              <td data-label="{$length}"><strong><xsl:value-of select="@length"/></strong><xsl:text> (</xsl:text><xsl:value-of select="@from"/><xsl:text>&#160;&#8211;&#160;</xsl:text><xsl:value-of select="@to"/><xsl:text>)</xsl:text></td>
              <td data-label="{$depth}" class="strong"><xsl:value-of select="@depth"/></td>
              <td data-label="{$marks}"><xsl:value-of select="@marks"/></td>
              <td data-label="{$found}">
                <xsl:choose>
                  <xsl:when test="@laid = 'no'"><xsl:value-of select="key('label', 'laid-as-surveyed')"/></xsl:when>
                  <xsl:otherwise>
                    <xsl:value-of select="@found"/>
                    <xsl:if test="@was"><xsl:text> (</xsl:text><xsl:value-of select="key('label', 'laid-surveyed')"/><xsl:text>: </xsl:text><xsl:value-of select="@was"/><xsl:text>)</xsl:text></xsl:if>
                    <xsl:if test="@photo"><xsl:text> (</xsl:text><xsl:value-of select="key('label', 'laid-photo')"/><xsl:text>: </xsl:text><xsl:value-of select="@photo"/><xsl:text>)</xsl:text></xsl:if>
                  </xsl:otherwise>
                </xsl:choose>
              </td>
            </tr>
          </xsl:for-each>
        </tbody>
      </table>
      <p class="small"><xsl:value-of select="key('label', 'laid-from-where')"/></p>
    </section>
    <xsl:if test="$paper = 'pack' or $apart">
      <xsl:comment>pack</xsl:comment>
      <p class="small"><xsl:value-of select="key('label', 'run-diagram')"/><xsl:text>: </xsl:text><a href="#diagram"><xsl:value-of select="key('label', 'crew-brief')"/></a></p>
      <xsl:comment>all</xsl:comment>
    </xsl:if>
    <xsl:if test="$paper != 'pack'">
      <xsl:comment>paper</xsl:comment>
      <p class="foot foot-before"><xsl:call-template name="foot-words"/></p>
      <section class="diagram-sheet" id="diagram">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'run-diagram')"/></xsl:element>
        <xsl:call-template name="diagram"/>
      </section>
      <xsl:comment>all</xsl:comment>
    </xsl:if>
  </xsl:template>
</xsl:stylesheet>
