<?xml version="1.0" encoding="UTF-8"?>
<!-- The parts list: picked by aisle, one row an article, large enough to tick with a glove on. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="parts">
    <section class="order">
      <xsl:element name="{$h2}">To be collected</xsl:element>
      <div class="blanks">
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="'Order number|Day and time|Name, telephone|Call before substituting'"/></xsl:call-template>
      </div>
      <xsl:if test="parts/part[@aisle = 'Cable']">
        <p class="strong">Cut each cable in one length, no joint. Mark both ends with the run's name.</p>
      </xsl:if>
    </section>

    <!-- An aisle's rows stand where its first article stands. -->
    <xsl:for-each select="parts/part[not(@aisle = preceding-sibling::part/@aisle)]">
      <xsl:variable name="aisle" select="@aisle"/>
      <section class="aisle">
        <xsl:element name="{$h2}"><xsl:value-of select="$aisle"/></xsl:element>
        <ul class="articles">
          <xsl:apply-templates select="../part[@aisle = $aisle]" mode="parts"/>
        </ul>
      </section>
    </xsl:for-each>

    <xsl:apply-templates select="cutting | parts/cutting" mode="parts"/>

    <p class="count"><xsl:text>Lines on this list: </xsl:text><strong><xsl:value-of select="count(parts/part)"/></strong></p>

    <xsl:if test="parts/not-counted">
      <section class="not-counted">
        <xsl:element name="{$h2}">Not on this list: see to these yourself</xsl:element>
        <ul class="ticks">
          <xsl:for-each select="parts/not-counted">
            <li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li>
          </xsl:for-each>
        </ul>
      </section>
    </xsl:if>
  </xsl:template>

  <xsl:template match="part" mode="parts">
    <li class="article">
      <span class="tick"><xsl:call-template name="box"/><span class="tick-label">picked</span></span>
      <span class="tick"><xsl:call-template name="box"/><span class="tick-label">loaded</span></span>
      <p class="quantity">
        <strong>
          <xsl:choose>
            <xsl:when test="@packs and @packs != '0'">
              <xsl:value-of select="@packs"/><xsl:text> </xsl:text><xsl:value-of select="@pack-word"/>
              <xsl:if test="@packs != '1'"><xsl:text>s</xsl:text></xsl:if>
            </xsl:when>
            <xsl:otherwise><xsl:value-of select="@quantity"/><xsl:text> </xsl:text><xsl:value-of select="@unit"/></xsl:otherwise>
          </xsl:choose>
        </strong>
        <span class="small">
          <xsl:if test="@packs and @packs != '0'"><xsl:text>of </xsl:text><xsl:value-of select="@pack"/><xsl:text>; </xsl:text></xsl:if>
          <xsl:text>needs </xsl:text><xsl:value-of select="@needed"/>
          <xsl:if test="@unit = 'm'"><xsl:text> m</xsl:text></xsl:if>
        </span>
      </p>
      <div class="what">
        <p><xsl:value-of select="."/></p>
        <p class="small">
          <xsl:if test="@standard"><xsl:value-of select="@standard"/><xsl:text>. </xsl:text></xsl:if>
          <xsl:if test="@for"><xsl:text>For </xsl:text><xsl:value-of select="@for"/><xsl:text>. </xsl:text></xsl:if>
          <xsl:if test="@note"><xsl:value-of select="@note"/></xsl:if>
        </p>
      </div>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="'given instead'"/></xsl:call-template>
    </li>
  </xsl:template>
</xsl:stylesheet>
