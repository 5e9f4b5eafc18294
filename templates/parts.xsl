<?xml version="1.0" encoding="UTF-8"?>
<!-- The parts list: picked by aisle, one row an article, large enough to tick with a glove on. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <!-- of several runs the one that most articles are for: paper names it once -->
  <xsl:variable name="most-for">
    <xsl:if test="count(/plan/run) &gt; 1">
      <xsl:for-each select="/plan/run">
        <xsl:sort select="count(/plan/papers/aisle/article[@runs = current()/@name])" data-type="number" order="descending"/>
        <xsl:if test="position() = 1"><xsl:value-of select="@name"/></xsl:if>
      </xsl:for-each>
    </xsl:if>
  </xsl:variable>

  <xsl:template match="plan" mode="parts">
    <section class="order">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'collected')"/></xsl:element>
      <div class="blanks">
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'order-number'), '|', key('label', 'collected-at'), '|', key('label', 'collected-by'), '|', key('label', 'call-before-substituting'))"/></xsl:call-template>
      </div>
      <p>
        <xsl:if test="parts/part[@aisle = 'Cable']"><strong><xsl:value-of select="key('label', 'cut-in-one-length')"/></strong><xsl:text> </xsl:text></xsl:if>
        <span class="nowrap"><xsl:value-of select="key('label', 'lines-on-list')"/><xsl:text>: </xsl:text><strong><xsl:value-of select="count(parts/part)"/></strong></span>
        <xsl:if test="$most-for != ''"><span class="on-paper"><xsl:text>. </xsl:text><xsl:value-of select="key('label', 'article-for')"/><xsl:text> </xsl:text><strong><xsl:value-of select="$most-for"/></strong><xsl:text> </xsl:text><xsl:value-of select="key('label', 'for-unless')"/></span></xsl:if>
      </p>
    </section>

    <xsl:for-each select="papers/aisle">
      <section class="aisle">
        <xsl:element name="{$h2}"><xsl:value-of select="@name"/></xsl:element>
        <ul><xsl:attribute name="class">articles<xsl:if test="count(/plan/parts/part) &gt; 36"> many</xsl:if></xsl:attribute><xsl:apply-templates select="article" mode="parts"/></ul>
      </section>
    </xsl:for-each>

    <xsl:if test="parts/cutting">
      <section class="cutting">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'how-to-cut')"/></xsl:element>
        <xsl:apply-templates select="parts/cutting" mode="parts"/>
      </section>
    </xsl:if>

    <xsl:if test="parts/prices">
      <section class="prices">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'own-prices')"/></xsl:element>
        <xsl:if test="parts/prices/@note"><p><xsl:value-of select="parts/prices/@note"/></p></xsl:if>
        <xsl:for-each select="parts/prices/total">
          <p><xsl:value-of select="key('label', 'sum')"/><xsl:text> (</xsl:text><xsl:value-of select="key('label', 'lines-priced')"/><xsl:text>: </xsl:text><xsl:value-of select="@lines"/><xsl:text>): </xsl:text><strong><xsl:value-of select="@amount"/><xsl:text> </xsl:text><xsl:value-of select="@currency"/></strong></p>
        </xsl:for-each>
        <xsl:if test="parts/prices/unpriced">
          <p><strong><xsl:value-of select="key('label', 'not-in-sum')"/><xsl:text>: </xsl:text><xsl:value-of select="count(parts/prices/unpriced)"/></strong><span class="on-screen"><xsl:text>: </xsl:text><xsl:for-each select="parts/prices/unpriced"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="."/></xsl:for-each></span></p>
        </xsl:if>
      </section>
    </xsl:if>

    <xsl:if test="parts/not-counted">
      <section class="not-counted">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'not-on-list')"/></xsl:element>
        <ul class="ticks">
          <xsl:for-each select="parts/not-counted">
            <li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li>
          </xsl:for-each>
        </ul>
      </section>
    </xsl:if>
  </xsl:template>

  <xsl:template match="article" mode="parts">
    <li class="article">
      <span class="tick"><xsl:call-template name="box"/><span class="tick-label"><xsl:value-of select="key('label', 'picked')"/></span></span>
      <span class="tick"><xsl:call-template name="box"/><span class="tick-label"><xsl:value-of select="key('label', 'loaded')"/></span></span>
      <p class="quantity"><strong><xsl:value-of select="@order"/></strong><xsl:if test="@pack"><span class="small"><xsl:value-of select="@pack"/></span></xsl:if></p>
      <div class="what">
        <p><span class="small"><xsl:value-of select="@number"/><xsl:text>. </xsl:text></span><xsl:value-of select="."/></p>
        <p class="small">
          <xsl:if test="@standard"><xsl:value-of select="@standard"/><xsl:text>. </xsl:text></xsl:if>
          <!-- without packs it is nearly what is ordered -->
          <xsl:if test="@wanted"><span><xsl:if test="not(@pack)"><xsl:attribute name="class">on-screen</xsl:attribute></xsl:if><xsl:value-of select="@wanted"/><xsl:text>. </xsl:text></span></xsl:if>
          <!-- paper says for which run; where on it the brief and the page say -->
          <xsl:if test="@for"><span class="on-screen"><xsl:value-of select="key('label', 'article-for')"/><xsl:text> </xsl:text><xsl:value-of select="@for"/><xsl:text>. </xsl:text></span></xsl:if>
          <xsl:if test="@runs and count(/plan/run) &gt; 1 and @runs != $most-for"><span class="on-paper"><xsl:value-of select="key('label', 'article-for')"/><xsl:text> </xsl:text><xsl:value-of select="@runs"/><xsl:text>. </xsl:text></span></xsl:if>
          <xsl:if test="@note"><xsl:value-of select="@note"/><xsl:if test="@price">.</xsl:if></xsl:if>
        </p>
        <xsl:if test="@price"><p class="small"><xsl:value-of select="key('label', 'price')"/><xsl:text> </xsl:text><xsl:value-of select="@price"/><xsl:text>: </xsl:text><strong><xsl:value-of select="@total"/></strong></p></xsl:if>
      </div>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="key('label', 'given-instead')"/></xsl:call-template>
    </li>
  </xsl:template>

  <!-- The cutting plan, where stock or offcuts were named. -->
  <xsl:template match="cutting" mode="parts">
    <div class="cut">
      <p><strong><xsl:value-of select="@description"/></strong></p>
      <p><xsl:value-of select="key('label', 'buy')"/><xsl:text>: </xsl:text><strong><xsl:value-of select="@buy-text"/></strong><xsl:text>. </xsl:text><xsl:value-of select="@result-text"/></p>
      <xsl:if test="@note"><p><xsl:value-of select="@note"/></p></xsl:if>
      <xsl:if test="opened">
        <ul class="ticks">
          <xsl:for-each select="opened">
            <li><xsl:call-template name="box"/><span><xsl:value-of select="@what"/><xsl:text>: </xsl:text><xsl:value-of select="key('label', 'cut')"/><xsl:text> </xsl:text><strong><xsl:value-of select="@pieces-text"/></strong><xsl:text>; </xsl:text><xsl:value-of select="key('label', 'left-over')"/><xsl:text> </xsl:text><xsl:value-of select="@left-text"/></span></li>
          </xsl:for-each>
        </ul>
      </xsl:if>
    </div>
  </xsl:template>
</xsl:stylesheet>
